"""Missed sessions: what is moved, added and dropped keeps to the person's days and minutes."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.plan.intake import DAYS, TrainingDay
from setwright.plan.week import Plan, Session
from setwright.rehearsal.rehearse import rehearse
from setwright.training.attended import attended, session_of, session_under_way
from setwright.training.missed import catch_up
from setwright.training.week_worth import WeekWorth

BOUNDED = settings(derandomize=True, max_examples=25, deadline=None)
UPPER = ("barbell-bench-press", "lat-pulldown", "lateral-raise")
LOWER = ("back-squat", "leg-extension")


@pytest.fixture(scope="session")
def week(new_diary):
    """Upper and lower body twice, and the days and minutes to do them in."""
    diary = new_diary()

    def session(name, day, exercises):
        return Session(name=name, day=day, exercises=tuple(diary.entry(one) for one in exercises))

    plan = Plan(
        setwright="plan/1",
        title="four days",
        sessions=(
            session("Upper 1", "monday", UPPER),
            session("Lower 1", "tuesday", LOWER),
            session("Upper 2", "thursday", UPPER),
            session("Lower 2", "friday", LOWER),
        ),
    )

    def person(*days, minutes=90):
        chosen = days or ("monday", "tuesday", "thursday", "friday")
        return new_diary(days=tuple(TrainingDay(day=day, minutes=minutes) for day in chosen)).intake

    return plan, person


def monday_of(diary_day=0):
    return 739495 + diary_day


MONDAY = monday_of()


def test_nothing_overdue_is_nothing_to_do(week):
    plan, person = week
    assert catch_up(plan, person(), {}, MONDAY) is None
    assert catch_up(plan, person(), {0: MONDAY}, MONDAY + 1) is None


def test_a_missed_session_moves_to_a_free_day(week):
    plan, person = week
    days = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday")
    answer = catch_up(plan, person(*days), {0: MONDAY}, MONDAY + 2)
    assert answer.missed == ("Lower 1",)
    assert [(one.session, one.to_day) for one in answer.moves] == [("Lower 1", "wednesday")]
    assert answer.drops == ()
    assert answer.kept == pytest.approx(1.0)


def test_without_a_free_day_the_least_is_lost(week):
    plan, person = week
    intake = person()
    answer = catch_up(plan, intake, {0: MONDAY}, MONDAY + 3)
    assert len(answer.drops) == 1
    worth = WeekWorth(plan, intake, MONDAY)
    best = max(worth.worth(frozenset({0, *pair})) for pair in ((1, 2), (1, 3), (2, 3)))
    kept = {0, 1, 2, 3} - {
        n for n, one in enumerate(plan.sessions) if one.name == answer.drops[0].session
    }
    assert worth.worth(frozenset(kept)) == pytest.approx(best)


def test_exercises_of_a_dropped_session_fill_the_minutes_that_are_left(week):
    plan, person = week
    roomy = catch_up(plan, person(minutes=120), {0: MONDAY}, MONDAY + 3)
    tight = catch_up(plan, person(minutes=30), {0: MONDAY}, MONDAY + 3)
    assert roomy.added
    assert roomy.kept > tight.kept
    assert tight.added == ()


def test_the_same_muscles_are_not_put_on_days_in_a_row(week):
    plan, person = week
    heavy = plan.model_copy(
        update={
            "sessions": tuple(
                one.model_copy(
                    update={
                        "exercises": tuple(
                            entry.model_copy(update={"sets": 6}) for entry in one.exercises
                        )
                    }
                )
                for one in plan.sessions
            )
        }
    )
    days = ("monday", "tuesday", "wednesday", "thursday", "friday")
    answer = catch_up(heavy, person(*days, minutes=180), {1: MONDAY + 1}, MONDAY + 2)
    on = {one.name: DAYS.index(one.day) for one in heavy.sessions}
    on |= {one.session: DAYS.index(one.to_day) for one in answer.moves}
    for one in answer.drops:
        del on[one.session]
    assert abs(on.get("Upper 1", 9) - on["Upper 2"]) > 1
    assert on["Lower 2"] - on["Lower 1"] > 1


@BOUNDED
@given(
    done=st.sets(st.integers(0, 3)),
    today=st.integers(0, 6),
    free=st.sets(st.sampled_from(DAYS), min_size=1),
    minutes=st.integers(20, 120),
)
def test_any_week_is_answered_within_days_and_minutes(week, done, today, free, minutes):
    plan, person = week
    intake = person(*sorted(free, key=DAYS.index), minutes=minutes)
    planned = [DAYS.index(one.day) for one in plan.sessions]
    before = {n: MONDAY + planned[n] for n in done if planned[n] < today}
    answer = catch_up(plan, intake, before, MONDAY + today)
    if answer is None:
        assert all(n in before or planned[n] >= today for n in range(4))
        return
    seconds = [one.total_s for one in rehearse(plan, intake).sessions]
    names = [one.name for one in plan.sessions]
    assert 0.0 <= answer.kept <= 1.0 + 1e-9
    used = [one.to_day for one in answer.moves]
    assert len(set(used)) == len(used)
    for move in answer.moves:
        assert move.to_day in free
        assert DAYS.index(move.to_day) >= today
        assert seconds[names.index(move.session)] <= minutes * 60 + 60
    assert not {one.session for one in answer.drops} & {one.session for one in answer.moves}
    assert answer.because


def test_sessions_are_told_by_their_exercises(week, new_diary):
    plan, _ = week
    assert session_of(plan, {"back-squat", "leg-extension"}, 4) == 3
    assert session_of(plan, {"back-squat", "leg-extension"}, 4, {3}) == 1
    assert session_of(plan, {"barbell-curl"}, 0) is None
    assert session_under_way(plan, {"lat-pulldown"}, 3) == 2
    diary = new_diary()
    start = diary.outing(0, 50.0, (10,), exercise="lat-pulldown")[0].day
    diary.outing(0, 60.0, (10,), exercise="barbell-bench-press")
    diary.outing(2, 80.0, (10,), exercise="back-squat")
    assert attended(plan, diary.past, start) == {0: start, 1: start + 2}
