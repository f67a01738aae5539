"""Edits as pure functions: whatever is asked in whatever order, the week stays a valid plan."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.exercises import catalogue
from setwright.plan.intake import DAYS
from setwright.plan.read import read_plan
from setwright.plan.shorthand import format_entry
from setwright.plan.week import Entry, Plan, Session
from setwright.plan.write import write_plan
from setwright.web.board import days, dosing, exchanging, locks, moving, pairing
from setwright.web.board.changing import At, EditError, whole_supersets
from setwright.web.board.figures import report_of
from setwright.web.board.mending import can_mend, mended
from setwright.web.board.orders import ORDERS, Order, carry_out

IDS = ("back-squat", "barbell-bench-press", "machine-row", "lat-pulldown", "dumbbell-curl",
       "lateral-raise", "leg-press", "triceps-pushdown")  # fmt: skip


def entry(exercise: str, letter: str | None = None) -> Entry:
    return Entry(
        exercise=exercise, sets=3, reps=(6, 10), rir=(2, 1), rest_s=(120, 150), superset=letter
    )


def week(*sessions: tuple[str, str]) -> Plan:
    """Sessions as ``("monday", "aABbc")``: exercises a, b, c ... with a letter where a capital
    follows."""
    made = []
    for day, code in sessions:
        entries = []
        for sign in code:
            if sign.islower():
                entries.append(entry(IDS[ord(sign) - ord("a")]))
            else:
                entries[-1] = entries[-1].model_copy(update={"superset": sign})
        made.append(Session(name=day.capitalize(), day=day, exercises=tuple(entries)))
    return Plan(setwright="plan/1", title="A week", sessions=tuple(made))


def code(plan: Plan) -> list[str]:
    return [
        "".join(
            chr(ord("a") + IDS.index(one.exercise)) + (one.superset or "")
            for one in session.exercises
        )
        for session in plan.sessions
    ]


@pytest.mark.parametrize(
    ("start", "at", "to", "expected"),
    [
        ("abc", 0, 3, "bca"),
        ("abc", 2, 0, "cab"),
        ("abc", 1, 1, "abc"),
        ("abc", 1, 2, "abc"),
        # A superset of others is passed, downwards and upwards.
        ("abAcAd", 0, 2, "bAcAad"),
        ("aAbAcd", 3, 1, "daAbAc"),
        # Within its own superset an exercise changes places and stays.
        ("aAbAc", 0, 2, "bAaAc"),
        ("aAbAcAd", 0, 2, "bAaAcAd"),
        # Out of it, it and a partner left alone lose the letter.
        ("aAbAc", 0, 3, "bca"),
        ("aAbAcAd", 0, 4, "bAcAda"),
    ],
)
def test_moving_within_a_day(start: str, at: int, to: int, expected: str) -> None:
    plan = week(("monday", start))
    moved, now = moving.move(plan, At(0, at), At(0, to))
    assert code(moved) == [expected]
    mover = plan.sessions[0].exercises[at].exercise
    assert moved.sessions[0].exercises[now.position].exercise == mover


def test_moving_between_days() -> None:
    plan = week(("monday", "aAbAc"), ("thursday", "dBeB"))
    moved, now = moving.move(plan, At(0, 0), At(1, 1))
    assert (code(moved), now) == (["bc", "dBeBa"], At(1, 2))
    moved, now = moving.move(week(("monday", "a"), ("thursday", "b")), At(0, 0), At(1, 0))
    assert (code(moved), now) == (["ab"], At(0, 0))
    moved, now = moving.move_to_day(plan, At(0, 1), "tuesday")
    assert (code(moved), now) == (["ac", "b", "dBeB"], At(1, 0))
    assert [one.day for one in moved.sessions] == ["monday", "tuesday", "thursday"]


def test_joining_and_taking_apart() -> None:
    assert code(pairing.with_next(week(("monday", "abc")), At(0, 0))) == ["aAbAc"]
    assert code(pairing.with_next(week(("monday", "aAbAcd")), At(0, 0))) == ["aAbAcAd"]
    assert code(pairing.with_next(week(("monday", "aAbAcBdB")), At(0, 1))) == ["aAbAcAdA"]
    assert code(pairing.with_next(week(("monday", "aAbAcd")), At(0, 2))) == ["aAbAcBdB"]
    plan, now = pairing.apart(week(("monday", "aAbAcAd")), At(0, 1))
    assert (code(plan), now) == (["aAcAbd"], At(0, 2))
    with pytest.raises(EditError, match="No exercise comes after"):
        pairing.with_next(week(("monday", "ab")), At(0, 1))


def test_refusals_say_why() -> None:
    plan = week(("monday", "a"))
    for edit, said in (
        (lambda: exchanging.remove(plan, At(0, 0)), "at least one exercise"),
        (lambda: days.remove_session(plan, 0), "at least one exercise"),
        (lambda: dosing.more_sets(plan, At(0, 0), 18), "20 sets are the most"),
        (lambda: dosing.change(plan, At(0, 0), reps=(9, 5)), "lower figure first"),
        (lambda: exchanging.add(plan, 0, IDS[0], None), "in this session already"),
        (lambda: exchanging.replace(plan, At(0, 0), "jump", None), "No such exercise"),
        (lambda: moving.move(plan, At(0, 0), At(0, 5)), "no such place"),
        (lambda: days.change_session(plan, 0, " ", "monday", None), "needs a name"),
    ):
        with pytest.raises(EditError, match=said):
            edit()


def test_an_order_finds_its_exercise_where_it_has_gone() -> None:
    order = Order("sets", At(0, 0), "back-squat", fields={"by": 1})
    moved = week(("monday", "b"), ("thursday", "ca"))
    done = carry_out(order, moved, None)
    assert done.at == At(1, 1) and done.plan.sessions[1].exercises[1].sets == 4
    with pytest.raises(EditError, match="not there any more"):
        carry_out(order, week(("monday", "b")), None)
    with pytest.raises(EditError, match="not there any more"):
        carry_out(order, week(("monday", "b"), ("tuesday", "a"), ("friday", "a")), None)


@given(st.lists(st.sampled_from([None, "A", "B"]), min_size=1, max_size=9))
def test_letters_are_shared_by_neighbours_only(letters: list[str | None]) -> None:
    entries = [entry("back-squat", letter) for letter in letters]
    kept = [one.superset for one in whole_supersets(entries)]
    for letter in {one for one in kept if one}:
        places = [n for n, one in enumerate(kept) if one == letter]
        assert len(places) > 1 and places[-1] - places[0] == len(places) - 1
    assert all(now in (None, before) for now, before in zip(kept, letters, strict=True))


@st.composite
def weeks(draw: st.DrawFn) -> Plan:
    made = []
    for day in sorted(draw(st.sets(st.sampled_from(DAYS), min_size=1, max_size=3)), key=DAYS.index):
        ids = draw(st.lists(st.sampled_from(IDS), min_size=1, max_size=6, unique=True))
        entries = whole_supersets(
            [entry(one, draw(st.sampled_from([None, None, "A", "B"]))) for one in ids]
        )
        made.append(Session(name=day.capitalize(), day=day, exercises=tuple(entries)))
    return Plan(setwright="plan/1", title="A week", sessions=tuple(made))


@st.composite
def orders(draw: st.DrawFn, plan: Plan) -> Order:
    number = draw(st.integers(0, len(plan.sessions) - 1))
    position = draw(st.integers(0, len(plan.sessions[number].exercises) - 1))
    to = draw(st.integers(0, len(plan.sessions) - 1))
    reps, rest = draw(st.tuples(st.integers(1, 30), st.integers(1, 30))), draw(st.integers(0, 600))
    fields = {
        "sets": {"by": draw(st.sampled_from([-3, -1, 1, 4]))},
        "prescribe": {"sets": draw(st.integers(1, 20)), "reps": reps, "rir": (3.0, 0.5),
                      "rest_s": (rest, rest + 30), "load_kg": draw(st.sampled_from([None, 82.5])),
                      "note": draw(st.sampled_from(["", "deep", ": odd, x 3"]))},
        "move": {"session": to,
                 "position": draw(st.integers(0, len(plan.sessions[to].exercises)))},
        "move-day": {"day": draw(st.sampled_from(DAYS))},
        "replace": {"new": draw(st.sampled_from(IDS))},
        "add": {"new": draw(st.sampled_from(IDS))},
        "add-session": {"day": draw(st.sampled_from(DAYS)), "new": draw(st.sampled_from(IDS))},
        "session": {"name": draw(st.sampled_from(["Push", "Legs: heavy"])),
                    "day": draw(st.sampled_from(DAYS)),
                    "minutes": draw(st.sampled_from([None, 45]))},
    }  # fmt: skip
    do = draw(st.sampled_from(sorted(ORDERS)))
    if do == "mend":
        found = [one for one in report_of(plan, None).remarks if can_mend(one)]
        one = draw(st.sampled_from(found)) if found else None
        fields["mend"] = {
            "criterion": one.criterion if one else "none",
            "subject": one.subject if one else "",
        }
    exercise = plan.sessions[number].exercises[position].exercise
    return Order(do, At(number, position), exercise, number, fields.get(do, {}))


@settings(derandomize=True, max_examples=150, deadline=None)
@given(st.data())
def test_whatever_is_asked_the_week_is_a_valid_plan(data: st.DataObject) -> None:
    plan = data.draw(weeks())
    for _ in range(4):
        before = write_plan(plan)
        order = data.draw(orders(plan))
        try:
            done = carry_out(order, plan, None)
        except EditError as refusal:
            assert str(refusal)
            assert write_plan(plan) == before
            continue
        # Reading checks everything a plan must hold to, and that it was written faithfully.
        assert read_plan(write_plan(done.plan), "plan.yaml") == done.plan
        assert write_plan(plan) == before
        assert done.said
        if done.at is not None:
            assert done.plan.sessions[done.at.session].exercises[done.at.position]
        plan = done.plan


@settings(derandomize=True, max_examples=80, deadline=None)
@given(st.data())
def test_moving_loses_and_invents_nothing(data: st.DataObject) -> None:
    plan = data.draw(weeks())
    order = data.draw(orders(plan).filter(lambda one: one.do in ("move", "move-day")))
    try:
        moved = carry_out(order, plan, None).plan
    except EditError:
        return
    held = [
        sorted(
            format_entry(one.model_copy(update={"superset": None}))
            for session in each.sessions
            for one in session.exercises
        )
        for each in (plan, moved)
    ]
    assert held[0] == held[1]


def test_locks_go_with_their_exercise() -> None:
    before, after = (
        week(("monday", "ab"), ("thursday", "c")),
        week(("monday", "b"), ("thursday", "ca")),
    )
    locked = ["monday/back-squat", "thursday/machine-row", "sunday/gone"]
    assert locks.following(locked, before, after) == ["thursday/back-squat", "thursday/machine-row"]
    kept = locks.kept_part(after, ["thursday/back-squat"])
    assert kept is not None and code(kept) == ["a"]
    assert locks.kept_part(after, ["friday/back-squat"]) is None


def test_a_mend_brings_its_figure_nearer_to_the_limit() -> None:
    plan = week(("monday", "abc"), ("thursday", "dAeAf"))
    tried = 0
    for remark in report_of(plan, None).remarks:
        if not can_mend(remark) or remark.figure is None or not off(remark.figure, remark):
            continue
        if remark.mend.kind == "drop exercise":
            continue
        changed, _ = mended(plan, remark, None)
        after = next(
            (
                one.figure
                for one in report_of(changed, None).remarks
                if (one.criterion, one.subject) == (remark.criterion, remark.subject)
            ),
            None,
        )
        assert after is not None and off(after, remark) < off(remark.figure, remark), remark
        tried += 1
    assert tried > 5


def off(figure: float, remark) -> float:
    """How far a figure is outside a remark's limits."""
    low = 0.0 if remark.low is None else remark.low - figure
    high = 0.0 if remark.high is None else figure - remark.high
    return max(low, high, 0.0)


def test_every_exercise_of_the_catalogue_can_be_put_in() -> None:
    plan = week(("monday", "a"))
    for one in catalogue.ids():
        if one != "back-squat":
            added, at = exchanging.add(plan, 0, one, None)
            assert added.sessions[0].exercises[at.position].exercise == one
