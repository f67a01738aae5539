"""How to do it: pace, partials, and what to take care of."""

from __future__ import annotations

from setwright.audit.context import Context, Placed
from setwright.exercises import catalogue
from setwright.handout.explained import Said
from setwright.handout.wording import number

LONG, MIDDLE, SHORT = (
    "It is hardest where the muscles are long, so do not cut the bottom short.",
    "It is hardest in mid range.",
    "It is hardest where the muscles are short, so finish each repetition.",
)
PARTIALS = (
    "partials-long-vs-short-meta-2025",
    "lengthened-partials-vs-full-rom-trained-2025",
)


def technique(context: Context, item: Placed) -> list[Said]:
    """Pace and partials, then cautions."""
    said = [_pace(item)]
    if item.entry.partials is not None:
        said.append(_partials(item))
    care = list(item.exercise.cautions)
    if item.exercise.pins_lifter:
        alone = context.intake is None or context.intake.setting == "alone"
        words = "A failed repetition can trap the lifter: set the safeties"
        words += ", and train it alone only with repetitions left." if alone else "."
        said.append(Said("care", words, ("free-bench-alone", "free-squat-alone", "rack-arms")))
    if care:
        said.append(Said("care", " ".join(f"{one.rstrip('.')}." for one in care)))
    return said


def _pace(item: Placed) -> Said:
    tempo = item.entry.tempo
    sources = ("practice-tempo", "repetition-duration-hypertrophy-meta-2015")
    if tempo is None:
        words = "Lower under control and lift at a pace of your own."
    else:
        words = f"Lower in {number(tempo.lowering_s)} s"
        if tempo.stretched_s:
            words += f", hold {number(tempo.stretched_s)} s at the stretched end"
        words += f", lift in {number(tempo.lifting_s)} s"
        if tempo.top_s:
            words += f", hold {number(tempo.top_s)} s at the top"
        words += "."
    return Said("technique", f"{words} {_hardest(item.exercise.id)}", sources)


def _hardest(exercise: str) -> str:
    at = catalogue.profile(exercise).hardest
    return LONG if at < 1 / 3 else SHORT if at > 2 / 3 else MIDDLE


def _partials(item: Placed) -> Said:
    if item.entry.partials == "whole sets":
        words = "Every repetition stays in the long half of the range."
    else:
        words = (
            "After the last full repetition of the last set go on with partials in the long half "
            "of the range."
        )
    return Said("technique", words, PARTIALS)
