"""What a felt reserve stands for, and how its bias is found."""

import math

import numpy as np
import pytest

from setwright.training.calls import cut_off
from setwright.training.lifter import Lifter

LIFTS = ("barbell-bench-press", "back-squat", "leg-press", "lat-pulldown")


def test_a_law_cut_off_below_nothing_is_that_of_scipy():
    stats = pytest.importorskip("scipy.stats")
    for mean in (-2.5, -0.5, 0.0, 1.0, 4.0):
        for sd in (0.5, 1.0, 2.0):
            law = stats.truncnorm(-mean / sd, math.inf, mean, sd)
            left, slope = cut_off(mean, sd)
            assert left == pytest.approx(law.mean(), rel=1e-6)
            assert slope == pytest.approx(max(law.var() / sd**2, 0.05), rel=1e-5)


def test_before_any_call_the_bias_is_that_of_people_in_general(drawn):
    # 0.95 repetitions too few are guessed (0.17 to 1.73): 'Accuracy in Predicting Repetitions to
    # Task Failure in Resistance Exercise: A Scoping Review and Exploratory Meta-analysis', Sports
    # Medicine, 2022, doi:10.1007/s40279-021-01559-x.
    lifter = Lifter.start("male", "intermediate")
    man = drawn(1)
    lifter.fold(man.week(0)[0])
    told = lifter.honesty(LIFTS[0])
    assert 0.17 < told.bias < 1.73
    assert told.low < 0 < told.high


def test_the_bias_is_found_within_half_a_repetition_after_six_weeks(drawn):
    off, inside = [], []
    for seed in range(24):
        man, lifter = drawn(seed), Lifter.start("male", "intermediate")
        for week in range(6):
            for done in man.week(week):
                lifter.fold(done)
        for lift in LIFTS:
            told = lifter.honesty(lift)
            off.append(told.bias - man.real_bias(lift))
            inside.append(told.low <= man.real_bias(lift) <= told.high)
    assert float(np.mean(np.abs(off))) <= 0.5
    assert float(np.mean(inside)) >= 0.6


def test_a_bias_that_changes_is_followed(drawn):
    man, lifter = drawn(4), Lifter.start("male", "intermediate")
    man.bias = 0.0
    for week in range(8):
        for done in man.week(week):
            lifter.fold(done)
    before = lifter.honesty(LIFTS[0]).bias
    man.bias = 2.5
    for week in range(8, 20):
        for done in man.week(week):
            lifter.fold(done)
    assert lifter.honesty(LIFTS[0]).bias > before + 1.0
