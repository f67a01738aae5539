"""The block, the lighter week, and the way back after a break."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.training.after_break import (
    after_illness,
    coming_back,
    load_cut,
    sets_kept,
    transition_weeks,
)
from setwright.training.block import Block, block_of
from setwright.training.client import block_start
from setwright.training.ease import ease_due, fell_beyond_noise
from setwright.training.trouble import Trouble

BOUNDED = settings(derandomize=True, max_examples=30, deadline=None)


@pytest.mark.parametrize(
    ("days", "low", "high"),
    # layoff-load-reset: 2 weeks off 5 to 10 %, 4 weeks 10 to 20 %, 8 weeks 30 to 40 %.
    [(13, 0.0, 0.0), (14, 0.05, 0.10), (28, 0.10, 0.20), (56, 0.30, 0.40), (200, 0.30, 0.40)],
)
def test_the_cut_of_the_load_lies_in_the_convention(days, low, high):
    assert low <= load_cut(days) <= high


def test_the_sets_of_the_first_week_back():
    # layoff-load-reset: half to two thirds after 2 weeks, half after 4.
    assert 0.5 <= sets_kept(14) <= 2 / 3
    assert sets_kept(28) == 0.5


@given(days=st.integers(0, 400))
@BOUNDED
def test_a_longer_break_is_never_heavier(days):
    assert load_cut(days + 1) >= load_cut(days)
    assert sets_kept(days + 1) <= sets_kept(days)
    assert transition_weeks(days + 14) >= transition_weeks(days)


@BOUNDED
@given(
    off=st.integers(14, 120),
    reps=st.integers(8, 14),
    load=st.sampled_from([20.0, 50.0, 80.0]),
    rir=st.integers(0, 4),
)
def test_after_a_break_never_heavier_than_before(new_diary, off, reps, load, rir):
    diary = new_diary()
    for day in (0, 7, 14):
        diary.outing(day, load, (reps, reps, reps), float(rir))
    back = 14 + off
    (first,) = diary.plan(back)
    assert first.change == "restart"
    assert all(one.load_kg <= load for one in first.sets)
    assert len(first.sets) < 3
    now = first.sets[0].load_kg
    for day in (back, back + 3):
        diary.outing(day, now, (12, 12), 3.0)
        (then,) = diary.plan(day + 3)
        assert then.sets[0].load_kg <= load


def test_the_transition_steps_up_to_the_old_load_and_ends(diary):
    for day in (0, 7, 14):
        diary.outing(day, 60.0, (12, 12, 12), 2.0)
    day, loads = 14 + 30, []
    for _ in range(5):
        (answer,) = diary.plan(day)
        loads.append(answer.sets[0].load_kg)
        diary.outing(day, loads[-1], (12,) * len(answer.sets), 3.0)
        day += 7
    assert loads[0] < 60.0
    assert loads == sorted(loads)
    assert loads[-1] >= 55.0
    assert coming_back(diary.past.before("lat-pulldown", 10**7), 10**7 - 1) is not None
    assert diary.plan(day)[0].change != "restart"


def test_a_long_break_restarts_far_from_failure(diary):
    for day in (0, 7):
        diary.outing(day, 60.0, (12, 12, 12), 2.0)
    (answer,) = diary.plan(7 + 60, diary.entry(rir=(0, 0)))
    assert all(one.rir_real >= 3 for one in answer.sets)


def test_other_training_in_between_is_no_break(diary):
    diary.outing(0, 60.0, (10, 10, 10))
    for day in (5, 9, 13, 17):
        diary.outing(day, 100.0, (10, 10), exercise="leg-press")
    (answer,) = diary.plan(20)
    assert answer.change != "restart"


def test_illness_halves_the_first_session_only(diary):
    for day in (0, 7, 14):
        diary.outing(day, 60.0, (12, 12, 12))
    monday = diary.past.days[0]
    diary.past.ill_until = monday + 18
    (answer,) = diary.plan(21, diary.entry(sets=4))
    assert len(answer.sets) == 2
    assert answer.sets[0].load_kg <= 60.0
    assert after_illness(monday + 18, diary.past.days, monday + 21)
    diary.outing(21, 60.0, (9, 9))
    assert len(diary.plan(24, diary.entry(sets=4))[0].sets) == 4


def test_a_block_starts_further_from_failure_and_rises_to_the_plan(new_diary):
    beginner = block_of(new_diary(experience="beginner").intake, 1000)
    more = [beginner.place(1000 + 7 * week).rir_more for week in range(4)]
    assert more == [2.0, 1.0, 0.0, 0.0]
    assert [beginner.place(1000 + 7 * week).week for week in range(4)] == [1, 2, 3, 4]
    eased = Block(1000, (), frozenset({1014}))
    assert eased.place(1016).kind == "ease"
    assert not eased.place(1016).may_rise
    assert eased.place(1022).may_rise
    held = eased.place(1022).held("ill", ("layoff-illness",))
    assert held.kind == "hold"
    assert not held.may_rise
    assert eased.place(1016).held("ill", ()).kind == "ease"


def test_the_block_starts_again_after_a_break():
    from datetime import date

    first = date(2026, 9, 7)
    monday = first.toordinal()
    even = [monday, monday + 7, monday + 14]
    assert block_start([first], even, date(2026, 9, 23)) == monday
    assert block_start([first], [*even, monday + 37], date(2026, 10, 16)) == monday + 35


def falling(new_diary, exercises, fall):
    diary = new_diary()
    for day in range(0, 42, 7):
        for exercise in exercises:
            reps = 12 if day < 28 else 12 - fall
            diary.outing(day, 50.0, (reps, reps, reps), 1.0, exercise)
    return diary


def test_a_fall_on_most_exercises_asks_for_a_lighter_week(new_diary):
    exercises = ("lat-pulldown", "leg-extension", "leg-press", "barbell-bench-press")
    fell = falling(new_diary, exercises, 7)
    today = fell.past.days[-1]
    answer = ease_due(fell.lifter, fell.past, today, today - 20)
    assert answer.due
    assert len(answer.falling) > 2
    even = falling(new_diary, exercises, 0)
    assert not ease_due(even.lifter, even.past, today, today - 20).due
    assert fell_beyond_noise(even.lifter, "lat-pulldown") is False
    assert fell_beyond_noise(even.lifter, "plank") is None


def test_pain_or_a_long_time_asks_for_one_too(new_diary):
    diary = new_diary()
    today = diary.outing(0, 50.0, (10, 10))[0].day
    assert not ease_due(diary.lifter, diary.past, today, today - 30).due
    assert ease_due(diary.lifter, diary.past, today, today - 60).due
    for exercise in ("lat-pulldown", "leg-press"):
        diary.past.report(exercise, today, Trouble(pain=5))
    sore = ease_due(diary.lifter, diary.past, today, today - 20)
    assert sore.due
    assert any("thin" in one for one in sore.because)
