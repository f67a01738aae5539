"""Days whose loads stand a factor of 2.2 from the person's own: asked, exercise by exercise."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date

from setwright.documents.units import KG_PER_LB
from setwright.exercises import catalogue
from setwright.plan.importing.one_row import Draft
from setwright.plan.importing.question import KEEP, Question, key_of
from setwright.plan.log import Log, SetRecord
from setwright.plan.unit_slips import best_by_day, comparable, reference, slipped, strength_index

# Around the usual strength a set may be and still speak for the unit it is read in.
USUAL = (0.75, 1.3)
Pairs = Sequence[tuple[Draft, SetRecord]]


def units_asked(
    pairs: Pairs, log: Log, answers: Mapping[str, str]
) -> tuple[dict[int, Question], list[Draft]]:
    """Ask about units, and put the answers to use.

    Args:
        pairs: sets of the table.
        log: the log they come to.
        answers: to questions.

    Returns:
        Questions by line, and the drafts, loads changed where an answer names the other unit.
    """
    questions: dict[int, Question] = {}
    other: set[int] = set()
    for ident in dict.fromkeys(record.exercise for _, record in pairs):
        mine = [(draft, record) for draft, record in pairs if record.exercise == ident]
        lines, way, usual = _off(mine, log)
        if not lines:
            continue
        read_in = "lb" if any(r.unit == "lb" for d, r in mine if d.line in lines) else "kg"
        key = key_of(ident, "units")
        answer = answers.get(key, "").casefold()
        if answer in ("kg", "lb") and answer != read_in:
            other |= lines
        elif answer not in (KEEP, "kg", "lb"):
            meant = "kg" if read_in == "lb" else "lb"
            asks = (
                f"{catalogue.exercise(ident).name}, read in {read_in}, is {way} than before by a "
                f"factor of 2.2 (usually worth about {usual:.0f} kg once). Is it {meant}?"
            )
            forms = (f"{key}={meant}", f"{key}={KEEP}")
            for line in lines:
                questions[line] = Question(key, "unit", (line,), "", "", asks, forms)
    return questions, [_exchanged(d) if d.line in other else d for d, _ in pairs]


def _off(mine: Pairs, log: Log) -> tuple[set[int], str, float]:
    """Lines that are off, which way, and the usual strength index before them."""
    ident = mine[0][1].exercise
    ids = {record.id for _, record in mine}
    known = best_by_day(r for r in log.sets() if r.exercise == ident and r.id not in ids)
    days: dict[date, list[tuple[Draft, SetRecord]]] = {}
    for draft, record in mine:
        if comparable(record):
            days.setdefault(record.at.date(), []).append((draft, record))
    past = known.get(ident, {})
    accepted: list[float] = []
    lines: set[int] = set()
    way, first_usual = "", 0.0
    for day in sorted({*days, *past}):
        usual = reference(accepted)
        todays = days.get(day, [])
        indices = [strength_index(record) for _, record in todays]
        best = max([*indices, past.get(day, 0.0)])
        found = slipped(best, usual) if usual is not None and todays else None
        if found is None or usual is None:
            accepted.append(best)
            continue
        asked = _asked(todays, usual)
        if not asked:
            accepted.append(best)
            continue
        lines |= asked
        way, first_usual = way or found, first_usual or usual
    return lines, {"too heavy": "heavier", "too light": "lighter"}.get(way, ""), first_usual


def _asked(todays: Pairs, usual: float) -> set[int]:
    """Lines of a day to ask about: those far off, or all when none speaks for its unit."""
    doubtful = {d.line for d, r in todays if not d.unit_said and not d.kept}
    usually = [d.line for d, r in todays if USUAL[0] <= strength_index(r) / usual <= USUAL[1]]
    if usually:
        far = {d.line for d, r in todays if strength_index(r) / usual > USUAL[1]}
        return doubtful & far
    return doubtful


def _exchanged(draft: Draft) -> Draft:
    fields = dict(draft.fields)
    lb = fields["unit"] == "lb"
    fields["load_kg"] = round(fields["load_kg"] * (1 / KG_PER_LB if lb else KG_PER_LB), 4)
    fields["unit"] = "kg" if lb else "lb"
    return replace(draft, fields=fields)
