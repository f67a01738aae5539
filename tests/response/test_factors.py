"""Every coefficient can be traced, and the draws keep to their limits."""

from pathlib import Path

import numpy as np
import pytest
from scipy.stats import gamma

from setwright.response.factors import CENTRAL, COEFFICIENTS, PERSON_SHAPE, drawn
from setwright.sources.library import finding

UNPUBLISHED = {"common practice", "from memory"}


@pytest.mark.parametrize("name", COEFFICIENTS)
def test_a_coefficient_is_sourced_and_lies_within_its_limits(name: str) -> None:
    c = COEFFICIENTS[name]
    assert c.sources and c.fitted and c.meaning
    for source in set(c.sources) - UNPUBLISHED:
        assert finding(source).id == source
    assert c.low < c.value < c.high
    assert c.sd > 0


def test_draws_centre_on_the_value_and_keep_to_the_limits() -> None:
    draws = drawn(4000, np.random.default_rng(3))
    for name, values in draws.items():
        c = COEFFICIENTS[name]
        assert values.min() >= np.float32(c.low) and values.max() <= np.float32(c.high)
        assert abs(float(np.median(values)) - CENTRAL[name]) < 0.1 * c.sd


def test_crowding_never_ends_before_it_starts() -> None:
    assert COEFFICIENTS["crowding start"].high < COEFFICIENTS["crowding flat"].low


def test_spread_between_people_has_the_published_quartiles() -> None:
    # 0.36, 0.61, 0.94 % a week: Meta-Analysis of Variation in Sport and Exercise Science,
    # preprint with open data, 2023
    low, middle, high = gamma.ppf([0.25, 0.5, 0.75], PERSON_SHAPE)
    assert low / middle == pytest.approx(0.36 / 0.61, abs=0.05)
    assert high / middle == pytest.approx(0.94 / 0.61, abs=0.08)


def test_the_document_shows_the_coefficients_as_they_are() -> None:
    text = (Path(__file__).parents[2] / "docs" / "response.md").read_text(encoding="utf-8")
    rows = {
        cells[1]: cells
        for cells in ([c.strip() for c in line.split("|")] for line in text.splitlines())
        if len(cells) > 4
    }
    for name, c in COEFFICIENTS.items():
        assert float(rows[name][2].split()[0]) == c.value
        assert float(rows[name][3]) == c.sd
