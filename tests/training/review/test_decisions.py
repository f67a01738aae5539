"""Decisions, and the plan that follows from them."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from setwright.documents.errors import DocumentError
from setwright.handout.review_data import review_data
from setwright.plan.client_folder import open_folder
from setwright.training.decisions import Decided, decide, pick
from setwright.training.proposals.guard import fractional_sets
from setwright.training.review import Review, review, with_decisions

FIRST = date(2026, 9, 7)
WEEK = 3
NEXT = FIRST + timedelta(7 * (WEEK + 1))
AT = datetime(2026, 10, 4, 20, 0)
Make = Callable[..., Any]


@pytest.fixture
def path(story: Make) -> Path:
    """Four weeks after which more sets and longer rest are proposed."""
    made = story().weeks(WEEK + 1, drop={"lat-pulldown": 3})
    made.folder()
    folder: Path = made.path
    return folder


def at_week(path: Path, number: int = WEEK) -> Review:
    return review(open_folder(path), FIRST + timedelta(7 * number))


def settle(path: Path, kind: str, choice: Any, hours: int = 0, **how: Any) -> Decided:
    found = at_week(path)
    (one,) = [one for one in found.proposals if one.kind == kind]
    return decide(found, one, choice, AT + timedelta(hours=hours), **how)


def next_file(path: Path) -> Path:
    return path / "plans" / f"{NEXT.isoformat()}.yaml"


def test_accepted_changes_next_weeks_plan_and_nothing_before(path: Path) -> None:
    before = open_folder(path).plan_on(FIRST)
    done = settle(path, "rest", "accept", because="the row was rushed")
    folder = open_folder(path)
    plan = folder.plan_on(NEXT)
    assert plan is not None
    assert plan == done.plan
    rests = {e.exercise: e.rest_s for session in plan.sessions for e in session.exercises}
    assert rests["lat-pulldown"] == (150, 180)
    assert rests["leg-press"] == (120, 150)
    assert folder.plan_on(NEXT - timedelta(1)) == before
    (kept,) = folder.decisions
    assert (kept.choice, kept.because, kept.kind) == ("accept", "the row was rushed", "rest")
    assert kept.week == FIRST + timedelta(7 * WEEK)


def test_declined_leaves_the_plan_as_it_is(path: Path) -> None:
    before = sorted(path.rglob("*.yaml"))
    done = settle(path, "rest", "decline", because="no time for it")
    assert done.plan is None
    assert done.comparison is None
    assert sorted(path.rglob("*.yaml")) == before
    assert open_folder(path).decisions[0].change == {}


def test_edited_holds_what_the_coach_wrote(path: Path) -> None:
    done = settle(path, "rest", "edit", change={"rest_most_s": 240})
    assert done.decision.change == {
        "exercise": "lat-pulldown",
        "rest_least_s": 150,
        "rest_most_s": 240,
    }
    assert done.plan is not None
    assert done.plan.sessions[0].exercises[1].rest_s == (150, 240)


def test_two_accepted_proposals_both_hold(path: Path) -> None:
    settle(path, "rest", "accept")
    done = settle(path, "more sets", "accept", hours=1)
    plan = open_folder(path).plan_on(NEXT)
    base = open_folder(path).plan_on(FIRST)
    assert plan is not None
    assert base is not None
    assert plan == done.plan
    assert plan.sessions[0].exercises[1].rest_s == (150, 180)
    assert fractional_sets(plan).sum() > fractional_sets(base).sum()
    assert done.comparison is not None
    assert done.comparison.second.sets == done.comparison.first.sets + 1


def test_deciding_twice_is_refused_and_superseding_is_explicit(path: Path) -> None:
    settle(path, "rest", "accept")
    with pytest.raises(DocumentError, match=r"accepted on 2026-10-04.*--instead"):
        settle(path, "rest", "decline", hours=1)
    done = settle(path, "rest", "decline", hours=2, instead=True)
    assert done.supersedes is not None
    folder = open_folder(path)
    assert folder.plan_on(NEXT) == folder.plan_on(FIRST)
    assert [one.choice for one in folder.decisions] == ["accept", "decline"]


@pytest.mark.parametrize(
    "change",
    [
        {},
        {"colour": "red"},
        {"exercise": "barbell-curl"},
        {"rest_least_s": -1},
        {"rest_least_s": "long"},
        {"rest_least_s": 600},
        {"rest_most_s": 1.5},
    ],
)
def test_a_change_that_does_not_fit_is_refused_and_nothing_is_kept(
    path: Path, change: dict[str, Any]
) -> None:
    with pytest.raises(DocumentError):
        settle(path, "rest", "edit", change=change)
    assert open_folder(path).decisions == ()
    assert not next_file(path).exists()


def test_a_plan_of_the_coachs_own_for_next_week_is_changed_in_place(path: Path) -> None:
    first = path / "plans" / f"{FIRST.isoformat()}.yaml"
    own = "# written on the train\n" + first.read_text(encoding="utf-8").replace(
        "Ilse's week", "Ilse's new week"
    )
    next_file(path).write_text(own, encoding="utf-8")
    settle(path, "rest", "accept")
    text = next_file(path).read_text(encoding="utf-8")
    assert text.startswith("# written on the train")
    plan = open_folder(path).plan_on(NEXT)
    assert plan is not None
    assert plan.title == "Ilse's new week"
    assert plan.sessions[0].exercises[1].rest_s == (150, 180)
    with pytest.raises(DocumentError, match="by hand"):
        settle(path, "rest", "decline", hours=1, instead=True)


def test_numbers_and_ids_pick_the_same(path: Path) -> None:
    found = at_week(path)
    for number, one in enumerate(found.proposals, start=1):
        assert pick(found, str(number)) is one
        assert pick(found, one.id) is one
    with pytest.raises(DocumentError, match="one of 1"):
        pick(found, "99")


def test_declined_does_not_come_back_unless_more_speaks_for_it(story: Make) -> None:
    made = story().weeks(4, drop={"lat-pulldown": 2})
    made.folder()
    settle(made.path, "rest", "decline")
    made.week(4, drop={"lat-pulldown": 2})
    made.folder()
    again = at_week(made.path, 4)
    assert "rest" not in [one.kind for one in again.proposals]
    later = made.week(5, drop={"lat-pulldown": 4}).week(6, drop={"lat-pulldown": 4})
    later.folder()
    grown = at_week(made.path, 6)
    assert "rest" in [one.kind for one in grown.proposals]


def test_a_lighter_week_agreed_is_lighter_and_the_plan_stays(story: Make) -> None:
    made = story().weeks(6, gain=-0.02)
    found = made.review(5)
    (one,) = [one for one in found.proposals if one.kind == "lighter week"]
    done = decide(found, one, "accept", AT)
    assert done.plan is None
    made.week(6, gain=-0.02)
    following = made.review(6)
    sets = [row.planned_sets for row in following.facts.sessions]
    # Half of three sets, rounded down, of four exercises each.
    assert sets == [4, 4]
    assert following.facts.client.block.place(following.facts.client.day).kind == "ease"


def test_deciding_leaves_the_review_of_the_week_as_it_was(story: Make) -> None:
    made = story().weeks(9, gain=-0.01, drop={"lat-pulldown": 3})
    before = made.review(8)
    assert "lighter week" in [one.kind for one in before.proposals]
    for hours, one in enumerate(before.proposals):
        at = AT + timedelta(days=40, hours=hours)
        decide(made.review(8), one, "accept", at)
    after = made.review(8)
    assert [one.id for one in after.proposals] == [one.id for one in before.proposals]
    assert set(after.decided) == {one.id for one in before.proposals}


def test_pain_is_exchanged_and_nothing_is_added_there(story: Make) -> None:
    made = story().weeks(3).week(3, pain={"machine-chest-press": 7})
    found = made.review(3)
    done = decide(found, found.proposals[0], "accept", AT)
    assert done.plan is not None
    held = {e.exercise for session in done.plan.sessions for e in session.exercises}
    assert "machine-chest-press" not in held
    after = review(open_folder(made.path), NEXT - timedelta(7))
    assert after.decided[found.proposals[0].id].choice == "accept"


@pytest.mark.parametrize("choice", ["accept", "decline"])
def test_a_review_goes_on_after_decisions_as_if_computed_anew(path: Path, choice: Any) -> None:
    found = at_week(path)
    for hours, one in enumerate(found.proposals):
        settle(path, one.kind, choice, hours)
        folder = open_folder(path)
        gone_on = with_decisions(found, folder.decisions)
        anew = at_week(path)
        assert gone_on.decided == anew.decided and len(gone_on.decided) == hours + 1
        assert gone_on.proposals == anew.proposals
        assert gone_on.facts.client.folder.decisions == folder.decisions
        assert review_data(gone_on) == review_data(anew)
