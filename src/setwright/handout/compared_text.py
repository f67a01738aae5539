"""Published comparisons of an exercise beside the computed figures: which come out."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from setwright.anatomy.atlas import muscles, part, parts
from setwright.exercises import catalogue
from setwright.exercises.comparing import Outcome, outcome
from setwright.exercises.comparisons import Side, comparisons
from setwright.handout.wording import folded

WIDTH: Final = 88
RELATIONS: Final = {
    ">": "more than",
    ">=": "no less than",
    "=": "about as much as",
    "> 0": "some",
    "about 0": "next to none",
}
LEAST_DIGITS: Final = 10


def compared(ident: str) -> tuple[Outcome, ...]:
    """Every published comparison that has an exercise in it, held against the computed figures.

    Raises:
        KeyError, ValueError: when a movement it stands against is not declared or cannot be done.
    """
    return tuple(
        outcome(one) for one in comparisons() if any(ident in side.does for side in one.sides)
    )


def compared_text(outcomes: Sequence[Outcome]) -> list[str]:
    """How many comparisons come out, and those that do not with both figures; nothing for none."""
    if not outcomes:
        return []
    missed = [one for one in outcomes if not one.reproduced]
    come = len(outcomes) - len(missed)
    lines = [f"  held against published comparisons: {come} of {len(outcomes)} come out"]
    if missed:
        lines.append("  do not come out: published, then computed (body and sets of reference)")
    return lines + [
        folded(_words(one), WIDTH, initial_indent="    - ", subsequent_indent="      ")
        for one in missed
    ]


def _words(one: Outcome) -> str:
    comparison = one.comparison
    left, right = comparison.left, comparison.right
    told = f"{comparison.quantity} of {_of(left)}, {_where(left)}: {RELATIONS[comparison.relation]}"
    figures = _figure(one.left)
    if right is not None:
        told += (
            f" {_where(right)}" if _of(right) == _of(left) else f" {_of(right)}, {_where(right)}"
        )
        figures += f" and {_figure(one.right or 0.0)}"
    reason = f"; {comparison.reason}" if comparison.reason else ""
    return f"{told} ({comparison.finding}); {figures}{reason}"


def _of(side: Side) -> str:
    """The parts or actions of a side; a ratio as one over the other."""
    names = " and ".join((*map(_name, side.parts), *side.actions)) or "the load"
    return f"{names} over {' and '.join(map(_name, side.over))}" if side.over else names


def _name(word: str) -> str:
    if word in {one.id for one in parts()}:
        return part(word).name
    return muscles()[word].name if word in muscles() else word


def _where(side: Side) -> str:
    """The exercises of a side, with their load where the study fixed it."""
    known = catalogue.ids()
    names = [
        catalogue.exercise(one).name if one in known else one.replace("-", " ") for one in side.does
    ]
    words = " with ".join(names)
    if side.load_kg is not None:
        words += f" at {side.load_kg:g} kg"
    if side.load_share is not None:
        words += f" at {100 * side.load_share:.0f} % of the largest load"
    return words


def _figure(value: float) -> str:
    return f"{value:.2f}" if abs(value) < LEAST_DIGITS else f"{value:.0f}"
