"""Bands and weights follow the aims."""

import numpy as np
import pytest

from setwright.anatomy.atlas import index, muscles, parts
from setwright.plan.intake import Aims, Intake
from setwright.response.targets import OPTIONAL, SUPPORTING, aims_of, bands, priority_weights
from setwright.sources.library import finding


def intake(**changes: object) -> Intake:
    base: dict[str, object] = {
        "setwright": "intake/1",
        "name": "invented",
        "experience": "intermediate",
        "age_band": "18-39",
        "screening": {"active_last_3_months": True},
        "days": [{"day": "monday", "minutes": 60}],
    }
    return Intake.model_validate(base | changes)


def test_named_muscles_exist() -> None:
    assert set(muscles()) >= OPTIONAL | SUPPORTING
    assert not OPTIONAL & SUPPORTING


def test_the_normal_band_is_the_published_one() -> None:
    # At least 4 weekly sets: No Time to Lift?, Sports Medicine, 2021, 10.1007/s40279-021-01490-1;
    # target 5 to 10 (secondary page); up to 20: Journal of Human Kinetics, 2022,
    # 10.2478/hukin-2022-0017.
    band = bands(None)["vastus-lateralis"]
    assert band.least == 4 and 5 <= band.good <= 10 and band.most == 20


def test_bands_are_ordered_and_their_evidence_exists() -> None:
    asked = intake(aims={"emphasise": ["glutes"], "maintain": ["chest"], "leave_out": ["calves"]})
    for band in bands(asked).values():
        assert 0 <= band.least <= band.good <= band.most
        for source in set(band.evidence) - {"common practice"}:
            assert finding(source).id == source


def test_aims_raise_and_lower_the_band() -> None:
    asked = bands(intake(aims={"emphasise": ["quadriceps"], "maintain": ["hamstrings"]}))
    usual = bands(None)
    assert asked["vastus-lateralis"].least > usual["vastus-lateralis"].least
    kept, normal = asked["semitendinosus"], usual["semitendinosus"]
    # One ninth to one third of the dose held size in young adults: Exercise Dosing to Retain
    # Resistance Training Adaptations, Medicine & Science in Sports & Exercise, 2011,
    # 10.1249/MSS.0b013e318207c15d
    assert normal.good / 9 <= kept.least <= kept.good <= normal.good / 2


def test_older_people_need_more_to_hold_size() -> None:
    aims = {"maintain": ["hamstrings"]}
    young, old = bands(intake(aims=aims)), bands(intake(aims=aims, age_band="60 and over"))
    assert old["semitendinosus"].least > young["semitendinosus"].least


def test_a_return_after_a_break_asks_for_less_and_says_why() -> None:
    back = {"active_last_3_months": True, "returning_after_break": True}
    band = bands(intake(screening=back))["vastus-lateralis"]
    assert band.least < bands(None)["vastus-lateralis"].least
    assert "layoff-load-reset" in band.evidence


def test_left_out_parts_are_not_demanded_and_do_not_count() -> None:
    asked = intake(aims={"leave_out": ["quadriceps"]})
    assert bands(asked)["rectus-femoris"].least == 0
    assert priority_weights(asked)[index()["rectus-femoris"]] == 0


def test_an_optional_muscle_is_demanded_once_emphasised() -> None:
    assert bands(None)["tibialis-anterior"].least == 0
    asked = intake(aims={"emphasise": ["tibialis anterior"]})
    assert bands(asked)["tibialis-anterior"].least > 0


def test_weights_sum_to_one_and_follow_the_aims() -> None:
    usual = priority_weights(None)
    asked = priority_weights(intake(aims={"emphasise": ["quadriceps"], "maintain": ["biceps"]}))
    assert usual.sum() == pytest.approx(1) and asked.sum() == pytest.approx(1)
    assert np.all(usual >= 0) and usual.shape == (len(parts()),)
    reference = index()["rectus-abdominis"]
    raised, lowered = index()["vastus-lateralis"], index()["biceps-long-head"]
    assert asked[raised] / asked[reference] == pytest.approx(2 * usual[raised] / usual[reference])
    assert asked[lowered] / asked[reference] == pytest.approx(
        0.25 * usual[lowered] / usual[reference]
    )


def test_a_muscle_counts_as_the_root_of_its_parts() -> None:
    weights = priority_weights(None)
    four = sum(weights[index()[p.id]] for p in parts() if p.muscle == "quadriceps")
    one = weights[index()["rectus-abdominis"]]
    assert four / one == pytest.approx(2.0)


def test_all_left_out_gives_no_weight_anywhere() -> None:
    everything = tuple(part.id for part in parts())
    assert not priority_weights(intake(aims={"leave_out": everything})).any()


def test_a_word_that_names_no_muscle_is_refused() -> None:
    with pytest.raises(KeyError):
        aims_of(Aims(emphasise=("flux capacitor",)))
