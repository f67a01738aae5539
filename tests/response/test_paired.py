"""Two weeks in the same draws."""

import numpy as np

from setwright.anatomy.atlas import parts
from setwright.response.growth import respond
from setwright.response.model import Dose
from setwright.response.paired import paired_growth
from setwright.response.person import Person

PERSON = Person("intermediate")
SQUATS = (Dose(0, "back-squat", 3.0, 8, 2, 150),)
MORE_SQUATS = (Dose(0, "back-squat", 5.0, 8, 2, 150),)
PRESSES = (Dose(0, "leg-press", 3.0, 10, 2, 150),)


def column() -> int:
    """The part that squats train most."""
    return int(np.argmax(respond(SQUATS, PERSON, 1).growth))


def test_the_same_week_twice_differs_in_no_draw() -> None:
    first, second = paired_growth([SQUATS, SQUATS], PERSON, draws=100)
    assert first.shape == (100, len(parts()))
    assert np.array_equal(first, second)


def test_two_more_sets_are_more_in_every_draw() -> None:
    first, second = paired_growth([SQUATS, MORE_SQUATS], PERSON, draws=200)
    at = column()
    assert (second[:, at] >= first[:, at]).all()
    assert np.median(second[:, at] - first[:, at]) > 0


def test_the_paired_difference_is_narrower_than_that_of_strangers() -> None:
    at = column()
    first, second = paired_growth([SQUATS, MORE_SQUATS], PERSON, draws=400)
    stranger = paired_growth([MORE_SQUATS], PERSON, draws=400, seed=7)[0]
    paired = np.quantile(second[:, at] - first[:, at], (0.1, 0.9))
    unpaired = np.quantile(stranger[:, at] - first[:, at], (0.1, 0.9))
    assert np.ptp(paired) < np.ptp(unpaired) / 3


def test_another_exercise_leaves_its_own_doubt_in_the_difference() -> None:
    at = column()
    first, second = paired_growth([SQUATS, PRESSES], PERSON, draws=400)
    difference = second[:, at] - first[:, at]
    assert difference.min() < 0 < difference.max()


def test_the_median_agrees_with_the_response_to_one_week() -> None:
    at = column()
    alone = respond(MORE_SQUATS, PERSON, 1, draws=400).growth[at]
    paired = np.median(paired_growth([MORE_SQUATS], PERSON, draws=400)[0][:, at])
    assert abs(paired / alone - 1) < 0.1


def test_the_same_seed_gives_the_same_draws() -> None:
    ours = paired_growth([SQUATS, PRESSES], PERSON, draws=50, seed=3)
    again = paired_growth([SQUATS, PRESSES], PERSON, draws=50, seed=3)
    assert all(np.array_equal(one, other) for one, other in zip(ours, again, strict=True))
