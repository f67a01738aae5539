"""Strength as the log shows it."""

from setwright.training.done import DoneSet
from setwright.training.lifter import Lifter
from setwright.training.seeds import Seed

BENCH = "barbell-bench-press"


def done(day, kg, reps, rir=0.0, exercise=BENCH, number=1, failed=False):
    return DoneSet(
        f"{day}-{number}", day, 600.0, exercise, number, kg, kg, reps, rir, failed, 180.0
    )


def test_a_seed_is_enough_to_predict():
    lifter = Lifter.start("male", "intermediate", [Seed(BENCH, 80.0, 8)])
    told = lifter.predict(BENCH, 80.0, 1)
    assert told.low < 8 < told.high
    assert lifter.one_rm("back-squat", 1) is None


def test_more_sets_narrow_the_interval():
    lifter = Lifter.start("male", "intermediate")
    widths = []
    for day in range(0, 42, 7):
        lifter.fold(done(day, 80.0, 8, failed=True))
        one = lifter.one_rm(BENCH, day)
        widths.append(one.high / one.low)
    assert widths == sorted(widths, reverse=True)


def test_a_copy_goes_its_own_way():
    lifter = Lifter.start("male", "intermediate")
    lifter.fold(done(0, 80.0, 8))
    before = lifter.predict(BENCH, 80.0, 3)
    other = lifter.copy()
    other.fold(done(3, 80.0, 12))
    assert lifter.predict(BENCH, 80.0, 3) == before
    assert other.predict(BENCH, 80.0, 6).mean > before.mean


def test_pounds_taken_for_kilograms_are_odd_and_hardly_move_the_estimate():
    lifter = Lifter.start("male", "intermediate")
    for day in range(0, 42, 7):
        lifter.fold(done(day, 80.0, 8, failed=True))
    before = lifter.one_rm(BENCH, 42).median
    told = lifter.fold(done(42, 176.4, 8, failed=True))
    assert told.odd
    assert abs(lifter.one_rm(BENCH, 42).median / before - 1) < 0.02


def test_the_load_asked_for_gives_the_repetitions_asked_for():
    lifter = Lifter.start("male", "intermediate")
    for day in range(0, 42, 7):
        lifter.fold(done(day, 80.0, 8, 2.0))
    load = lifter.load_for(BENCH, 6, 1.0, 45)
    assert abs(lifter.predict(BENCH, load, 45, 1.0).median - 6) <= 1
