"""Proposals of a week as the coach's page shows them, with what was decided or typed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from setwright.handout.proposal_text import CHOICE, expected_words
from setwright.plan.decision import Decision
from setwright.training.proposals.model import Proposal
from setwright.training.review import Review
from setwright.web.coach.changes import Field, fields


@dataclass(frozen=True)
class Card:
    """One proposal and what has become of it.

    Attributes:
        number: on the page, as on the printed review.
        effect: expected, in words.
        decision: that holds, or None.
        decided: it in words.
        fields: that may be edited, with what was typed and what was wrong with it.
        errors: that belong to no field.
        because: the reason that was typed.
        refused: whether a form was sent and refused.
    """

    number: int
    proposal: Proposal
    effect: str
    decision: Decision | None
    decided: str
    fields: tuple[Field, ...]
    errors: tuple[str, ...]
    because: str
    refused: bool


def cards(
    found: Review,
    sent: str = "",
    said: Mapping[str, str] | None = None,
    errors: Mapping[str, str] | None = None,
) -> list[Card]:
    """The proposals.

    Args:
        found: the review.
        sent: id of the proposal whose form was sent and refused.
        said: what that form said.
        errors: what was wrong with it.
    """
    rows = []
    for at, one in enumerate(found.proposals, start=1):
        decision = found.decided.get(one.id)
        typed, wrong = (said or {}, errors or {}) if one.id == sent else ({}, {})
        edited = tuple(
            replace(each, value=typed.get(each.name, each.value), error=wrong.get(each.name, ""))
            for each in (fields(one, found.facts.plan) if one.change else ())
        )
        named = {each.name for each in edited}
        rows.append(
            Card(
                at,
                one,
                expected_words(one.expected),
                decision,
                _decided(decision) if decision else "",
                edited,
                tuple(words for name, words in wrong.items() if name not in named),
                typed.get("because", ""),
                bool(wrong),
            )
        )
    return rows


def _decided(decision: Decision) -> str:
    words = f"{CHOICE[decision.choice].capitalize()} on {decision.at:%A} {decision.at:%d %B}."
    words = words.replace(" 0", " ")
    return f"{words} {decision.because}" if decision.because else words
