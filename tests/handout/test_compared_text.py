"""Published comparisons beside computed figures: counted, and told where they disagree."""

from __future__ import annotations

import pytest

from setwright.exercises.comparing import Outcome
from setwright.exercises.comparisons import Comparison
from setwright.handout.compared_text import compared, compared_text

LEFT = {"does": ["back-squat"], "parts": ["vastus-lateralis"]}
RIGHT = {"does": ["leg-extension"], "parts": ["vastus-lateralis"]}


def comparison(**more: object) -> Comparison:
    return Comparison.model_validate(
        {
            "id": "one", "finding": "a-trial", "kind": "longitudinal", "quantity": "growth",
            "left": LEFT, "relation": ">", "right": RIGHT, "confidence": "20 women", **more,
        }
    )  # fmt: skip


def test_nothing_compared_says_nothing() -> None:
    assert compared_text([]) == []


def test_what_comes_out_is_counted_and_what_does_not_has_both_figures() -> None:
    met = Outcome(comparison(), 0.9, 0.5, reproduced=True)
    missed = Outcome(comparison(reason="one joint only"), 0.41, 0.72, reproduced=False)
    words = " ".join(" ".join(compared_text([met, missed])).split())
    assert "1 of 2 come out" in words
    assert "growth of vastus lateralis, Back squat: more than Leg extension" in words
    assert "0.41 and 0.72; one joint only" in words
    assert "0.90" not in words
    assert not any("do not come out" in line for line in compared_text([met]))


def test_a_side_alone_and_fixed_loads_are_said() -> None:
    alone = Outcome(comparison(relation="about 0", right=None), 0.4, None, reproduced=False)
    assert any("next to none" in line for line in compared_text([alone]))
    moments = comparison(
        quantity="peak moment",
        left={"does": ["back-squat"], "actions": ["knee extension"], "load_kg": 80},
        right={"load_kg": None, "load_share": 0.5},
    )
    words = " ".join(" ".join(compared_text([Outcome(moments, 120, 60.4, False)])).split())
    assert "at 80 kg: more than Back squat at 50 % of the largest load" in words
    assert "120 and 60" in words


@pytest.mark.parametrize("ident", ["leg-extension", "lying-leg-curl"])
def test_every_comparison_of_an_exercise_is_held_against_its_figures(ident: str) -> None:
    outcomes = compared(ident)
    assert outcomes
    for one in outcomes:
        assert any(ident in side.does for side in one.comparison.sides)
    bullets = [line for line in compared_text(outcomes) if line.startswith("    - ")]
    assert len(bullets) == sum(not one.reproduced for one in outcomes)
