"""Stop signs and cautions."""

from __future__ import annotations

from setwright.handout.cautions import cautions
from setwright.handout.teaching.content import Points, Section, Words
from setwright.plan.intake import Intake


def care_section(intake: Intake | None, in_full: bool) -> Section:
    """The cautions of the person first, then those for everybody; in full with their sources."""
    items = tuple(Words(one.words, one.sources if in_full else ()) for one in cautions(intake))
    return Section("care", "Take care", (Points(items),))
