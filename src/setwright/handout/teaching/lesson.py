"""What there is to teach about a criterion, whoever the plan is for."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from setwright.handout.teaching.content import Strength

Theme = Literal[
    "How much, and how often",
    "Which exercises",
    "How hard, and how many repetitions",
    "The session on the clock",
    "The person and the gym",
]
THEMES: tuple[Theme, ...] = (
    "How much, and how often",
    "Which exercises",
    "How hard, and how many repetitions",
    "The session on the clock",
    "The person and the gym",
)


@dataclass(frozen=True)
class Lesson:
    """One criterion in plain words.

    Attributes:
        theme: the chapter it is taught in.
        means: what is measured and where the limit lies.
        matters: why it matters.
        strength: how strong the evidence behind the limit is, as judged by us.
        thin: where the evidence is thin, and what of the limit is ours.
        shown: published figures worth showing: id of the finding, name of the value, and what it
            is in words a reader understands.
    """

    theme: Theme
    means: str
    matters: str
    strength: Strength
    thin: str
    shown: tuple[tuple[str, str, str], ...] = ()
