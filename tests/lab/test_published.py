"""The population against published figures; each check carries its source.

Title, journal, year and DOI stand beside the finding in src/setwright/sources/findings and are
printed by `setwright lab`:
- Proximity to Failure and Total Repetitions Performed in a Set Influences Accuracy of Intraset
  Repetitions in Reserve-Based Rating of Perceived Exertion, Journal of Strength and Conditioning
  Research, 2021, 10.1519/JSC.0000000000002995
- Accuracy of Intraset Repetitions-in-Reserve Predictions During the Bench Press Exercise in
  Resistance-Trained Male and Female Subjects, Journal of Strength and Conditioning Research, 2023,
  10.1519/JSC.0000000000004653
- Accuracy in Predicting Repetitions to Task Failure in Resistance Exercise: A Scoping Review and
  Exploratory Meta-analysis, Sports Medicine, 2022, 10.1007/s40279-021-01559-x
- Reproducibility and Applicability of Traditional Strength Training Prescription Recommendations,
  Biology (Basel), 2022, 10.3390/biology11060851
- The Effects Of Rest Interval Length On Bench Press Performance In Resistance-Trained Men And
  Women, Journal of Strength and Conditioning Research, 2010, 10.1097/01.JSC.0000367200.49548.b1
- Effects of Low- Versus High-Load Resistance Training on Muscle Strength and Hypertrophy in
  Well-Trained Men, Journal of Strength and Conditioning Research, 2015,
  10.1519/JSC.0000000000000958
- Resistance Training Volume Enhances Muscle Hypertrophy but Not Strength in Trained Men, Medicine &
  Science in Sports & Exercise, 2019, 10.1249/MSS.0000000000001764
"""

import pytest

from setwright.lab.check import mean_check, spread_check
from setwright.lab.published import published_checks

CHECKS = published_checks(250, 1)


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.what)
def test_the_population_agrees_with(check):
    assert check.met, f"{check.measured:.2f} not in {check.low:.2f} to {check.high:.2f}"


def test_every_check_names_its_source():
    assert all(check.source for check in CHECKS)


def test_all_topics_are_there():
    words = " ".join(check.what for check in CHECKS)
    for topic in ("called reserve", "repetitions, SD", "untrained", "trained", "break"):
        assert topic in words


def test_intervals_by_hand():
    one = mean_check("layoff-regain", "", "", 10.0, 2.0, 25, [10.7])
    assert (round(one.low, 3), round(one.high, 3)) == (9.216, 10.784)
    assert one.met
    # 95 % of an SD of 2.0 from 25 people: chi-square with 24 degrees is 12.40 to 39.36.
    spread = spread_check("layoff-regain", "", "", 2.0, 25, [0.0, 10.0])
    assert abs(spread.low - 2 * (24 / 39.36) ** 0.5) < 0.01
    assert abs(spread.high - 2 * (24 / 12.40) ** 0.5) < 0.01
    assert not spread.met
