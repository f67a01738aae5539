"""What a remark says, by criterion: sentences as data, filled with the remark's figures.

A sentence may use ``subject``, ``figure``, ``least``, ``most`` and the names in the remark's
detail. A criterion without a sentence here, or one whose remark lacks a name, is said plainly by
``plainly``.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from setwright.audit.remark import Mend, Remark
from setwright.exercises import catalogue
from setwright.handout.wording import number
from setwright.plan.intake import DAYS

SENTENCES: Mapping[str, str] = {
    "time": "{subject} takes {figure:.0f} min (80 % interval {low:.0f} to {high:.0f}) of the "
    "{most:.0f} to be had",
    "screening holds": "the screening answers allow training to start",
    "screening close": "nothing is known of the person: {because}",
    "screening misses": "a licensed professional should clear training first: {because}",
    "compound-heavier": "{subject}: {figure:+.1f} repetitions on isolations against compounds, on "
    "average (at least {least:+.0f})",
    "coverage": "{subject} gets {figure:g} fractional sets a week (at least {least:g})",
    "weekly-volume": "{subject}: {figure:g} fractional sets a week; the aim, {aim}, asks for "
    "{least:g} to {most:g} and does well with {good:g}",
    "frequency": "{subject}: trained on {figure:.0f} {days} a week (at least {least:.0f})",
    "effort-caps": "{subject} goes down to {figure:g} RIR; {because} asks for {least:g} or more",
    "effort-course": "{subject} goes from {first:g} RIR on its first set to {figure:g} on its last "
    "(at most {most:g} there)",
    "exclusions holds": "nothing the person avoids is in the week",
    "exclusions misses": "{subject} is to be avoided ({because})",
    "kit holds": "the gym has the kit and makes the loads",
    "kit": "{subject}: {because}",
    "feasible": "{subject}: on set {set:.0f} about {figure:g} repetitions will be possible; the "
    "band starts at {least:g}",
    "high-reps-compound": "{subject} goes up to {figure:g} repetitions; above {most:g} breath "
    "tends to end the set before the muscle does",
    "merit": "{subject} has a merit of {figure:g} (at least {least:g}): loaded stretch "
    "{stretch:g}, spinal load {spine:g}, set-up {setup_s:.0f} s",
    "order": "{subject} starts with {figure:.0%} of its fresh repetitions lost to what stands "
    "before it (at most {most:.0%})",
    "partials holds": "{subject}: lengthened partials suit it",
    "partials misses": "{subject}: lengthened partials do not fit, for this is {because}",
    "performance-kept": "{subject} keeps {figure:.0%} of its first set's repetitions on set "
    "{set:.0f} (at least {least:.0%}); {needed_s:.0f} s of rest would keep them",
    "recovery": "{subject}: {figure:g} fractional sets on each of two days in a row (at most "
    "{most:g})",
    "redundancy": "{subject} brings {figure:.0%} of an even share of the week's growth that "
    "nothing else brings (at least {least:.0%})",
    "rep-range": "{subject}: {figure:g} repetitions (between {least:g} and {most:g})",
    "rep-variety": "{figure:.0%} of the sets have 5 to 15 repetitions (at least {least:.0%}), in "
    "{bands:.0f} different bands",
    "rest": "{subject} rests {figure:.0f} s between sets (between {least:.0f} and {most:.0f})",
    "session-volume": "{subject}: {figure:g} fractional sets in the fullest session; beyond "
    "{most:g} no further benefit could be found",
    "similar": "{subject}: {one} and {other} are the most alike, likeness {figure:.2f} (at most "
    "{most:.2f})",
    "spinal-load": "{subject}: {figure:g} sets weighted by spinal load (at most {most:g})",
    "supersets": "{subject} share {figure:.0%} of their work (at most {most:.0%})",
    "tempo": "{subject}: {figure:g} s a repetition (between {least:g} and {most:g}), lowering "
    "{lowering_s:g} s",
    "volume-jump": "{subject}: {figure:g} fractional sets in a first week (at most {most:g})",
    "warm-up": "{subject}: {ramp_sets:.0f} ramp sets take {figure:.0%} of the session (at most "
    "{most:.0%})",
}
MENDS: Mapping[str, str] = {
    "add sets": "add {amount} to {target}",
    "drop sets": "drop {amount} from {target}",
    "add exercise": "add {amount} of {target}",
    "drop exercise": "drop {target}",
    "swap exercise": "swap {target} for another exercise",
    "lengthen rest": "rest {amount} longer on {target}",
    "shorten rest": "rest {amount} less on {target}",
    "raise reps": "raise the band of {target} by {amount}",
    "lower reps": "lower the band of {target} by {amount}",
    "raise rir": "leave {amount} more in reserve on {target}",
    "lower rir": "leave {amount} fewer in reserve on {target}",
    "move earlier": "move {target} earlier in its session",
    "move day": "move {amount} of {target} to another day",
    "split pair": "do {target} one after the other instead of alternating them",
    "pair exercises": "alternate {target}",
    "change tempo": "change the tempo of {target}",
    "lengthen lowering": "take {amount} longer to lower on {target}",
    "ask a professional": "ask a licensed professional about: {target}",
    "use safeties": "set safeties or ask for a spotter on {target}, or leave {amount} more in "
    "reserve",
    "change load": "change the load of {target}",
    "accept": "accept it: {target}",
}


def subject_words(subject: str) -> str:
    """A remark's subject with exercises by name and days with a capital."""
    pieces = re.split(r"( and | on |, )", subject)
    return "".join(_piece(piece) for piece in pieces)


def _piece(piece: str) -> str:
    if piece in DAYS:
        return piece.capitalize()
    return catalogue.exercise(piece).name if piece in catalogue.ids() else piece


def remark_words(remark: Remark) -> str:
    """What was found, as a sentence without its full stop."""
    facts: dict[str, Any] = dict(remark.detail)
    facts |= {
        "subject": subject_words(remark.subject),
        "figure": remark.figure,
        "least": remark.low,
        "most": remark.high,
        "days": "day" if remark.figure == 1 else "days",
    }
    sentence = SENTENCES.get(f"{remark.criterion} {remark.verdict}") or SENTENCES.get(
        remark.criterion
    )
    if sentence is None:
        return plainly(remark)
    try:
        return sentence.format_map(facts)
    except (KeyError, TypeError, ValueError):
        return plainly(remark)


def plainly(remark: Remark) -> str:
    """Subject, figure, limits and detail in a fixed order."""
    parts = []
    if remark.figure is not None:
        parts.append(f"{number(remark.figure)} {remark.unit}".strip())
    limits = limit_words(remark)
    if limits:
        parts.append(f"({limits})")
    said = " ".join(parts)
    details = [_detail(name, value) for name, value in remark.detail if value != ""]
    words = "; ".join(piece for piece in (said, *details) if piece)
    return f"{subject_words(remark.subject)}: {words or remark.verdict}"


def limit_words(remark: Remark) -> str:
    """The limits of the figure, or nothing when it has none."""
    limits = []
    if remark.low is not None:
        limits.append(f"at least {number(remark.low)}")
    if remark.high is not None:
        limits.append(f"at most {number(remark.high)}")
    return ", ".join(limits)


def _detail(name: str, value: str | float) -> str:
    shown = number(value) if isinstance(value, int | float) else subject_words(value)
    return shown if name == "because" else f"{name.replace('_', ' ')} {shown}"


def mend_words(mend: Mend) -> str:
    """The smallest change that helps, without its full stop."""
    amount = "" if mend.amount is None else _amount(mend.amount, mend.unit)
    target = subject_words(mend.target)
    sentence = MENDS[mend.kind]
    if not amount and "{amount}" in sentence:
        words = f"{mend.kind}: {target}"
    else:
        words = sentence.format(target=target, amount=amount)
    if mend.kind in ("change load", "change tempo") and mend.amount is not None:
        words += f" by {_tenths(mend.amount):+g} {mend.unit}".rstrip()
    if mend.gain is not None:
        words += f", which brings it to {number(mend.gain)}"
    return " ".join(words.split())


def _tenths(amount: float) -> float:
    """To a tenth; what would then be nothing, to a hundredth."""
    return round(amount, 1) or round(amount, 2)


def _amount(amount: float, unit: str) -> str:
    shown = f"{_tenths(amount):g}"
    return f"{shown} {unit.removesuffix('s') if shown == '1' and len(unit) > 1 else unit}".strip()
