"""The exercises that train a part, ranked by share, by length under load, by cost to the spine."""

from __future__ import annotations

import pytest

from setwright.exercises import catalogue
from setwright.handout.knowledge_text import TRAINS_FROM, muscle_text, trainers

PARTS = ("rectus-femoris", "gluteus-maximus-lower", "deltoid-middle")


@pytest.mark.parametrize("part", PARTS)
def test_each_order_puts_first_what_it_ranks_by(part: str) -> None:
    shares = [row.share for row in trainers(part, "share", 20)]
    lengths = [row.length or 0.0 for row in trainers(part, "length", 20)]
    spines = [row.spinal_load for row in trainers(part, "spine", 20)]
    assert shares == sorted(shares, reverse=True)
    assert lengths == sorted(lengths, reverse=True)
    assert spines == sorted(spines)
    assert min(shares) >= TRAINS_FROM


def test_the_figures_are_those_of_the_profiles() -> None:
    for row in trainers("rectus-femoris", "share", 5):
        profile = catalogue.profile(row.exercise)
        assert row.share == profile.share("rectus-femoris")
        assert row.spinal_load == profile.spinal_load


def test_orders_differ_and_only_so_many_come() -> None:
    found = {by: trainers("gluteus-maximus-lower", by, 6) for by in ("share", "length", "spine")}
    assert all(len(rows) == 6 for rows in found.values())
    assert len({tuple(row.exercise for row in rows) for rows in found.values()}) == 3


def test_the_text_has_a_row_an_exercise_and_says_when_there_is_none() -> None:
    rows = trainers("rectus-femoris", "length", 3)
    text = muscle_text({"rectus-femoris": rows})
    for row in rows:
        assert f"{row.share:>7.2f}{row.length:>9.2f}{row.spinal_load:>7.2f}" in text
    assert "no exercise" in muscle_text({"rectus-femoris": ()})
