"""The virtual lifters: curve, calls, days and slips."""

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.lab.attempt import Told, attempt
from setwright.lab.body import Body
from setwright.lab.calls import caller, written
from setwright.lab.curve import MOST_REPS, capacity, fraction_for
from setwright.lab.fate import draw_fate
from setwright.lab.slips import as_logged
from setwright.lab.traits import draw_traits
from setwright.training.done import DoneSet

BOUNDED = settings(derandomize=True, max_examples=60, deadline=None)


def lifter(seed: int, weeks: int = 4):
    rng = np.random.default_rng(seed)
    return Body(draw_traits(rng)), draw_fate(rng, weeks)


@BOUNDED
@given(st.floats(1, 40), st.floats(0.2, 0.55), st.floats(10, 35))
def test_the_curve_and_its_inverse_agree(reps, floor, pace):
    fraction = fraction_for(reps, floor, pace)
    if fraction > floor + 0.011:
        assert abs(capacity(fraction, floor, pace) - min(reps, MOST_REPS)) < 1e-6


@BOUNDED
@given(st.floats(0.3, 1.2), st.floats(0.0, 0.2), st.floats(0.2, 0.55), st.floats(10, 35))
def test_more_load_never_allows_more_repetitions(fraction, more, floor, pace):
    assert capacity(fraction + more, floor, pace) <= capacity(fraction, floor, pace) + 1e-9


@BOUNDED
@given(st.integers(0, 500), st.floats(0.3, 1.1), st.floats(0, 4), st.integers(1, 20))
def test_a_set_stays_within_what_can_be_done(seed, fraction, rir, most):
    body, fate = lifter(seed)
    load = fraction * body.fresh_one_rm("leg-press")
    out = attempt(body, fate, (0, 0, 0), "leg-press", Told(load, rir, most))
    assert 0 <= out.effort.reps <= min(out.effort.possible, most)
    assert out.called is None or out.called >= 0
    if out.failed:
        assert out.effort.reps == out.effort.possible


def test_written_repetitions_are_tried_even_past_the_felt_reserve():
    body, fate = lifter(3)
    load = 0.75 * body.fresh_one_rm("machine-row")
    can = int(body.can_do("machine-row", 0.75, 0.0))
    out = attempt(body, fate, (0, 0, 0), "machine-row", Told(load, -5.0, can + 8, can + 8))
    assert out.failed
    assert out.effort.reps == out.effort.possible


def test_fatigue_takes_repetitions_and_rest_gives_them_back():
    body, fate = lifter(5)
    load = 0.75 * body.fresh_one_rm("leg-extension")
    fresh = body.can_do("leg-extension", 0.75, 0.0)
    attempt(body, fate, (0, 0, 0), "leg-extension", Told(load, 0.0))
    tired = body.can_do("leg-extension", 0.75, 0.0)
    body.rest(240.0)
    rested = body.can_do("leg-extension", 0.75, 0.0)
    assert tired < rested < fresh


def test_calls_are_worse_in_long_sets():
    # Accuracy in Predicting Repetitions to Task Failure in Resistance Exercise: A Scoping Review
    # and Exploratory Meta-analysis, Sports Medicine, 2022, 10.1007/s40279-021-01559-x.
    traits = draw_traits(np.random.default_rng(1))
    short, long = (caller(traits, "back-squat", n, 0.0, 0.0).error(5.0) for n in (8.0, 20.0))
    assert long > short


@BOUNDED
@given(st.floats(-2, 30), st.floats(0, 4), st.floats(0, 1))
def test_what_is_written_is_a_reserve(felt, told, luck):
    assert 0 <= written(felt, told, luck) <= 10


def test_luck_is_the_same_whoever_coaches():
    first, second = (draw_fate(np.random.default_rng(7), 6) for _ in range(2))
    assert np.array_equal(first.set_noise, second.set_noise)
    assert np.array_equal(first.missed, second.missed)


def test_days_have_heavier_tails_than_normal():
    days = np.concatenate([draw_fate(np.random.default_rng(k), 16).day for k in range(60)])
    spread = np.std(days)
    assert np.mean(np.abs(days) > 3.5 * spread) > 4 * 0.000465


DONE = DoneSet("a", 1, 1080, "leg-press", 1, 62.5, 62.5, 12, 2.0, False, None)


def test_slips():
    assert as_logged(DONE, "back-squat", 0.5, 0.1) == ((DONE,), False)
    (pounds,), wrong = as_logged(DONE, "back-squat", 0.001, 0.1)
    assert wrong and abs(pounds.load_kg / DONE.load_kg - 2.2046) < 0.01
    (swapped,), _ = as_logged(DONE, "back-squat", 0.007, 0.1)
    assert swapped.reps == 21
    (swapped,), _ = as_logged(DONE, "back-squat", 0.007, 0.9)
    assert swapped.load_kg == 26.5
    (other,), _ = as_logged(DONE, "back-squat", 0.012, 0.9)
    assert other.exercise == "back-squat"
    twice, _ = as_logged(DONE, "back-squat", 0.016, 0.9)
    assert len(twice) == 2 and twice[0].id != twice[1].id
