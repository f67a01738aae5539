"""What one field alone cannot show: fields that contradict each other."""

from __future__ import annotations

from collections.abc import Iterator
from difflib import get_close_matches
from typing import get_args

from setwright.anatomy import atlas
from setwright.anatomy.joints import Action
from setwright.documents.yaml_build import Path_
from setwright.exercises.model import Pattern
from setwright.plan.intake import Avoidance, Intake, Stock
from setwright.plan.week import Entry, Plan, Session

# A path, what stands there, what is allowed.
Clash = tuple[Path_, str, str]


def plan_clashes(plan: Plan) -> Iterator[Clash]:
    """Contradictions of a plan."""
    for at, session in enumerate(plan.sessions):
        path: Path_ = ("sessions", at)
        for place, entry in enumerate(session.exercises):
            yield from _entry(entry, (*path, "exercises", place))
        yield from _supersets(session, path)
    for day in {session.day for session in plan.sessions}:
        places = [at for at, session in enumerate(plan.sessions) if session.day == day]
        if len(places) > 2:
            yield (
                ("sessions", places[2], "day"),
                f"{day} a third time",
                "two sessions a day at most",
            )


def _entry(entry: Entry, path: Path_) -> Iterator[Clash]:
    for field, (low, high) in (("reps", entry.reps), ("rest_s", entry.rest_s)):
        if low > high:
            yield (*path, field), f"{low}-{high}", "the lower figure first"
    if entry.tempo is not None:
        tempo = entry.tempo
        if tempo.lowering_s + tempo.stretched_s + tempo.lifting_s + tempo.top_s <= 0:
            yield (*path, "tempo"), "a repetition of 0 s", "more than 0 s in all"


def _supersets(session: Session, path: Path_) -> Iterator[Clash]:
    letters = [entry.superset for entry in session.exercises]
    for letter in sorted({letter for letter in letters if letter is not None}):
        places = [at for at, other in enumerate(letters) if other == letter]
        field = (*path, "exercises", places[0], "superset")
        if len(places) == 1:
            yield field, f"{letter!r} on one exercise alone", "a letter shared by two or more"
        elif places[-1] - places[0] + 1 != len(places):
            yield (
                (*path, "exercises", places[-1], "superset"),
                f"{letter!r} with other exercises between",
                "exercises of a superset one after the other",
            )


def intake_clashes(intake: Intake) -> Iterator[Clash]:
    """Contradictions of an intake."""
    seen: set[str] = set()
    for at, day in enumerate(intake.days):
        if day.day in seen:
            yield ("days", at, "day"), f"{day.day} again", "each day once"
        seen.add(day.day)
    yield from _aims(intake)
    for at, item in enumerate(intake.avoid):
        yield from _avoid(item, ("avoid", at))
    for at, stock in enumerate(intake.kit):
        yield from _stock(stock, ("kit", at))
    if intake.gym == "listed" and not intake.kit:
        yield ("kit",), "no kit", "the kit there is, or `gym: bodyweight`"
    for at, work in enumerate(intake.earlier_this_week):
        for words, sets in work.sets.items():
            if not 1 <= sets <= 60:
                yield ("earlier_this_week", at, "sets", words), str(sets), "1 to 60 sets"


def _aims(intake: Intake) -> Iterator[Clash]:
    meant: list[tuple[str, str, frozenset[str]]] = []
    for field in ("emphasise", "maintain", "leave_out"):
        words = getattr(intake.aims, field)
        for at, word in enumerate(words):
            try:
                parts = frozenset(atlas.resolve(word))
            except KeyError:
                near = get_close_matches(atlas.plain(word), atlas.vocabulary(), n=3)
                hint = f"; near it: {', '.join(near)}" if near else ""
                yield ("aims", field, at), repr(word), f"a muscle, a part or a group{hint}"
                continue
            for other, said, others in meant:
                if _contradict(field, parts, other, others):
                    where = "again" if other == field else f"in {other} too ({said!r})"
                    yield ("aims", field, at), f"{word!r}, {where}", "one aim for a muscle"
            meant.append((field, word, parts))


def _contradict(field: str, parts: frozenset[str], other: str, others: frozenset[str]) -> bool:
    """Whether two aims cannot both be met; a narrower word may be set apart from a wider one."""
    if parts == others:
        return True
    # What is left out wholly cannot be emphasised or maintained in part.
    return field == "leave_out" and other != "leave_out" and others < parts


def _avoid(item: Avoidance, path: Path_) -> Iterator[Clash]:
    given = [name for name in ("exercise", "pattern", "action") if getattr(item, name) is not None]
    if len(given) != 1:
        found = " and ".join(given) or "none of the three"
        yield path, found, "exactly one of exercise, pattern and action"
    for name, known in (("pattern", get_args(Pattern)), ("action", get_args(Action))):
        value = getattr(item, name)
        if value is not None and value not in known:
            near = get_close_matches(value, known, n=3, cutoff=0.3)
            yield (*path, name), repr(value), f"one of {', '.join(near or known)}"


def _stock(stock: Stock, path: Path_) -> Iterator[Clash]:
    steps = (stock.from_kg, stock.to_kg, stock.step_kg)
    stepped = any(step is not None for step in steps)
    if stepped and None in steps:
        yield path, "from, to or step without the others", "from_kg, to_kg and step_kg together"
    if stock.from_kg is not None and stock.to_kg is not None and stock.from_kg > stock.to_kg:
        yield (*path, "to_kg"), f"{stock.to_kg:g} below from_kg", "the smaller load first"
    kinds = [stepped, bool(stock.loads_kg), bool(stock.plates_kg)]
    if sum(kinds) > 1:
        yield path, "loads said in two ways", "a range, a list of loads, or a bar with plates"
