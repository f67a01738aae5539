"""Figures of a plan in the trade's words."""

from __future__ import annotations

from functools import partial
from textwrap import fill

from setwright.documents.units import load_words
from setwright.plan.week import Entry, Plan, Session, Tempo
from setwright.rehearsal.model import RehearsedSession

# Ids and names with hyphens stay whole, so that they can be found and copied.
folded = partial(fill, break_on_hyphens=False)


def number(value: float) -> str:
    """A figure without needless decimals, for example ``2.5`` or ``3``."""
    return f"{round(value, 2):g}"


def changed(value: float, digits: int = 1) -> str:
    """A change with its sign, for example ``+2.5`` or ``-3``; no change has none.

    >>> changed(2.46), changed(-0.04), changed(-3, 0)
    ('+2.5', '0', '-3')
    """
    rounded = round(value, digits)
    return f"{rounded:+.{digits}f}" if rounded else "0"


def span(low: float, high: float, mark: str = "-") -> str:
    """A band, for example ``8-10``; one figure when both ends are the same."""
    return number(low) if low == high else f"{number(low)}{mark}{number(high)}"


def rest_words(rest_s: tuple[int, int], mark: str = "-") -> str:
    """A rest range in minutes where that is short to write, in seconds otherwise."""
    low, high = rest_s
    if low >= 60 and low % 30 == 0 and high % 30 == 0:
        return f"{span(low / 60, high / 60, mark)} min"
    return f"{span(low, high, mark)} s"


def rir_words(entry: Entry) -> str:
    """Repetitions in reserve from the first to the last set, for example ``3 > 1``."""
    first, last = entry.rir
    if entry.sets == 1 or first == last:
        return number(first)
    return f"{number(first)} > {number(last)}"


def tempo_words(tempo: Tempo | None) -> str:
    """Lowering, stretched, lifting, top in seconds; empty for the exercise's own pace."""
    if tempo is None:
        return ""
    steps = (tempo.lowering_s, tempo.stretched_s, tempo.lifting_s, tempo.top_s)
    return "/".join(number(step) for step in steps)


def first_load(lived: RehearsedSession, position: int, plan: Plan) -> str:
    """Load of the first working set, or its share of the 1RM when no load is known."""
    first = next((one for one in lived.sets if one.entry == position), None)
    if first is None:
        return ""
    if first.load_kg is not None:
        return load_words(first.load_kg, plan.unit)
    return f"~{first.fraction:.0%} 1RM"


def sets_of(plan: Plan) -> int:
    """Working sets of the week."""
    return sum(entry.sets for session in plan.sessions for entry in session.exercises)


def heading(session: Session) -> str:
    """Day and name of a session."""
    return f"{session.day.capitalize()}: {session.name}"


def listed(words: list[str]) -> str:
    """Words as a sentence lists them: ``a, b and c``."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} and {words[-1]}"


def counted(count: float, word: str) -> str:
    """A count with its word: ``1 set``, ``3 sets``."""
    return f"{number(count)} {word}" if count == 1 else f"{number(count)} {word}s"
