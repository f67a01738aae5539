"""The shipped profiles are what the mechanics give today."""

import pytest

from setwright.exercises.catalogue import ids
from setwright.exercises.computed import compute
from setwright.exercises.profile_cache import computed, inputs_digest, shipped

SAMPLE = (
    "back-squat",
    "romanian-deadlift",
    "seated-leg-curl",
    "barbell-bench-press",
    "lat-pulldown",
    "cable-crunch",
    "neck-extension",
)


def test_the_profiles_are_of_today():
    assert shipped().inputs_sha256 == inputs_digest(), "run `make profiles`"


def test_every_exercise_has_a_profile():
    assert set(shipped().profiles) == set(ids())
    assert len(ids()) >= 160


@pytest.mark.parametrize("ident", SAMPLE)
def test_a_sample_computed_anew_is_the_same(ident):
    kept, anew = computed(ident), compute(ident, draws=0)
    assert anew.load == pytest.approx(kept.load, rel=1e-3)
    assert anew.ends == kept.ends
    assert anew.parts.keys() == kept.parts.keys()
    for part, work in anew.parts.items():
        assert work.share == pytest.approx(kept.parts[part].share, abs=2e-3)
        assert work.loaded_ratio == pytest.approx(kept.parts[part].loaded_ratio, abs=2e-3)


def test_draws_give_the_shipped_spread():
    kept, anew = computed("leg-extension"), compute("leg-extension")
    for part, work in anew.parts.items():
        assert work.sd == pytest.approx(kept.parts[part].sd, abs=2e-3)
