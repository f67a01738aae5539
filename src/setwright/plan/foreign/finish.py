"""From the draft to the plan: days of the week, supersets, and what does not fit a plan."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Sequence
from dataclasses import replace
from itertools import groupby
from string import ascii_uppercase
from typing import Any

from setwright.plan.day_words import SPREAD
from setwright.plan.foreign.draft import DayDraft, Draft, EntryDraft
from setwright.plan.foreign.model import ASSUMED, Piece, Reading
from setwright.plan.intake import DAYS
from setwright.plan.shorthand import format_entry
from setwright.plan.week import Entry, Plan, Session

MOST_SESSIONS, MOST_EXERCISES, A_DAY = 14, 30, 2
LONGEST_NAME, LONGEST_TITLE, LONGEST_PERSON = 60, 120, 80


def finished(draft: Draft, name: str, contents: Sequence[tuple[str, str]]) -> Reading:
    """The reading of a file, with the plan where there is one.

    Args:
        draft: what was read.
        name: of the file.
        contents: place and text of everything the file holds, in its order.
    """
    days = [day for day in draft.days if _worth(draft, day)]
    sessions: list[Session] = []
    taken: dict[int, int] = {}
    for day, weekdays in zip(days, _weekdays(draft, days), strict=True):
        entries = tuple(_alternated(draft, day))
        _begins(draft, day, weekdays)
        for weekday in weekdays:
            if len(sessions) >= MOST_SESSIONS or taken.get(weekday, 0) >= A_DAY:
                _leave_out(draft, day, "a plan holds two sessions a day and 14 a week at most")
                break
            taken[weekday] = taken.get(weekday, 0) + 1
            heading = day.heading
            sessions.append(
                Session(
                    name=(heading.name if heading else "Session")[:LONGEST_NAME],
                    day=DAYS[weekday],
                    minutes=heading.minutes if heading else None,
                    exercises=entries,
                )
            )
    plan = _plan(draft, sessions, name) if sessions else None
    return Reading(name, accounted(draft.pieces, contents), plan)


def _begins(draft: Draft, day: DayDraft, weekdays: Sequence[int]) -> None:
    """Say where a day begins that no line of its own heads."""
    if day.piece is not None or not day.entries:
        return
    piece = draft.pieces[day.entries[0].pieces[0]]
    names = " and ".join(DAYS[one].capitalize() for one in weekdays)
    draft.pieces[day.entries[0].pieces[0]] = replace(
        piece, why="; ".join(filter(None, (f"{names} begins here", piece.why)))
    )


def accounted(pieces: Iterable[Piece], contents: Sequence[tuple[str, str]]) -> tuple[Piece, ...]:
    """The pieces in the order of the file; whatever was passed over needs attention."""
    found = {piece.place: piece for piece in pieces}
    return tuple(
        replace(found[place], text=text)
        if place in found
        else Piece(place, text, "attention", "not in the plan", 0.0, "not read", (), place)
        for place, text in contents
    )


def _worth(draft: Draft, day: DayDraft) -> bool:
    """Whether a day has an exercise; if not its heading says why it is not in the plan."""
    for entry in day.entries[MOST_EXERCISES:]:
        for piece in entry.pieces:
            draft.change(
                piece, kind="attention", meaning="not in the plan", why="an exercise beyond 30"
            )
    del day.entries[MOST_EXERCISES:]
    if day.entries:
        return True
    if day.piece is not None and day.heading is not None and not day.heading.off:
        if day.left_out:
            draft.change(day.piece, kind="waiting", why="waits for its exercises")
        else:
            draft.change(day.piece, kind="heading", why="no exercise under it")
    return False


def _weekdays(draft: Draft, days: list[DayDraft]) -> list[tuple[int, ...]]:
    """The weekdays of every session: those named, or days spread over the week."""
    named = [day.heading.weekdays if day.heading else () for day in days]
    if not any(named):
        spread = SPREAD.get(len(days)) or tuple(at * 7 // len(days) for at in range(len(days)))
        found: list[tuple[int, ...]] = [(at,) for at in spread]
    else:
        used = {at for one in named for at in one}
        free = [at for at in range(7) if at not in used]
        found = []
        for one in named:
            found.append(one or ((free.pop(0),) if free else (6,)))
    for day, one, said in zip(days, found, named, strict=True):
        if said or day.piece is None:
            continue
        piece = draft.pieces[day.piece]
        draft.change(
            day.piece,
            meaning=f"{DAYS[one[0]].capitalize()}: {piece.meaning}",
            confidence=min(piece.confidence, ASSUMED),
            why=f"no weekday said: {DAYS[one[0]].capitalize()}",
        )
    return found


def _leave_out(draft: Draft, day: DayDraft, why: str) -> None:
    pieces = {piece for entry in day.entries for piece in entry.pieces}
    if day.piece is not None:
        draft.change(day.piece, kind="attention", why=why)
        why = f"waits for {draft.pieces[day.piece].place}"
    for piece in sorted(pieces):
        if draft.pieces[piece].kind == "exercise":
            draft.change(piece, kind="waiting", meaning="not in the plan", why=why)


def _alternated(draft: Draft, day: DayDraft) -> Iterable[Entry]:
    """The exercises of a day, with a letter for those that are alternated."""
    letters: set[str] = set()
    runs = [(key, list(run)) for key, run in groupby(day.entries, key=lambda one: one.group)]
    written = {one.letter for _, run in runs if len(run) > 1 for one in run}
    for key, run in runs:
        letter = _letter(key, run, letters, written)
        if letter is not None:
            letters.add(letter)
        for one in run:
            entry = one.entry.model_copy(update={"superset": letter})
            _told(draft, one, entry, alone=key is not None and letter is None)
            yield entry


def _letter(
    key: Hashable | None, run: list[EntryDraft], used: set[str], written: set[str | None]
) -> str | None:
    if key is None or len(run) < 2:
        return None
    own = run[0].letter
    if own is not None and own not in used:
        return own
    return next((one for one in ascii_uppercase if one not in used and one not in written), None)


def _told(draft: Draft, one: EntryDraft, entry: Entry, alone: bool) -> None:
    """Bring what an exercise's piece says up to date with its superset."""
    if entry.superset is None and not alone:
        return
    piece = draft.pieces[one.pieces[0]]
    changes: dict[str, Any] = {}
    if entry.superset is not None:
        plain = format_entry(entry.model_copy(update={"superset": None}), draft.unit)
        changes["meaning"] = piece.meaning.replace(plain, format_entry(entry, draft.unit))
    elif alone:
        said = f"{one.letter or 'superset'} stands on this exercise alone: no superset"
        changes["why"] = "; ".join(filter(None, (piece.why, said)))
    draft.pieces[one.pieces[0]] = replace(piece, **changes)


def _plan(draft: Draft, sessions: list[Session], name: str) -> Plan:
    stem = name.replace("\\", "/").rsplit("/", 1)[-1].rsplit(".", 1)[0].strip()
    return Plan(
        setwright="plan/1",
        title=(draft.head.get("title") or stem or "Imported plan")[:LONGEST_TITLE],
        person=draft.head.get("person", "")[:LONGEST_PERSON],
        unit=draft.unit,
        sessions=tuple(sessions),
    )
