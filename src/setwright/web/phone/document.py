"""The session document: what page and script know of a client's day."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable
from typing import Any

from setwright.plan.log import Record
from setwright.plan.log_store import line_of
from setwright.plan.symptoms import HINTS, SYMPTOMS
from setwright.sources.library import finding
from setwright.training.pain import answer_to
from setwright.training.stop_signs import DAY_SIGNS, STOP_SIGNS, referral
from setwright.training.trouble import OF_ONE_EXERCISE
from setwright.web.phone.day import Day, Meeting, Place
from setwright.web.phone.table import Row, table
from setwright.web.phone.work import work

PAIN_LEVELS = 11


def document(day: Day) -> dict[str, Any]:
    """Everything but the tables, as plain data."""
    meetings = {
        "now": None if day.now is None else _meeting(day, day.now, "now"),
        "then": None if day.then is None else _meeting(day, day.then, "then"),
    }
    return {
        "day": day.today.isoformat(),
        "unit": day.plan.unit,
        **meetings,
        "missed": [] if day.missed is None else list(day.missed.because),
        "left_out": list(day.left_out),
        "symptoms": list(day.symptoms),
        "referral": [one.words for one in referral(day.symptoms)],
        "records": [plain(one) for one in day.records],
        "safety": safety(),
    }


def plain(record: Record) -> dict[str, Any]:
    """A record as the JSON object of a log's line."""
    found: dict[str, Any] = json.loads(line_of(record))
    return found


def safety() -> dict[str, Any]:
    """What stops training and what to do about pain, in words."""
    return {
        "symptoms": [
            {
                "name": one,
                "words": [caution.words for caution in referral([one])],
                "ends_session": one not in OF_ONE_EXERCISE,
            }
            for one in SYMPTOMS
        ],
        "signs": [one.words for one in (*STOP_SIGNS, *DAY_SIGNS)],
        "pain": [answer_to(level) for level in range(PAIN_LEVELS)],
        "pain_words": f"{finding('pain-scale').finding} {finding('pain-persist').finding}",
        "hints": list(HINTS),
    }


def tables(day: Day) -> dict[str, list[list[Any]]]:
    """Next sets worked out beforehand, by exercise.

    Of the session of today with its stand-ins, and of the session after it. A row is kind, number,
    kg, repetitions and reserve of the set that is done; kg, repetitions, reserve and rest of the
    next; and why.
    """
    found: dict[str, list[list[Any]]] = {}
    for meeting in filter(None, (day.now, day.then)):
        for place in meeting.places:
            works = [(place.entry, place.planned)]
            if place.other is not None and meeting is day.now:
                works.append(place.other)
            for entry, planned in works:
                if entry.exercise not in found:
                    found[entry.exercise] = _packed(table(day.client, entry, planned))
    return found


def table_of(day: Day, exercise: str) -> list[list[Any]]:
    """The rows for the next set of one exercise of today."""
    for place in day.now.places if day.now is not None else ():
        entry, planned = place.now
        if entry.exercise == exercise:
            return _packed(table(day.client, entry, planned, only_next=True))
    return []


def _packed(rows: Iterable[Row]) -> list[list[Any]]:
    return [
        [
            row.kind, row.number, row.kg, row.reps, row.rir,
            row.next_kg, row.next_reps, row.next_rir, row.rest_s, " ".join(row.because),
        ]
        for row in rows
    ]  # fmt: skip


def _meeting(day: Day, meeting: Meeting, which: str) -> dict[str, Any]:
    return {
        "name": meeting.name,
        "day": meeting.day.isoformat(),
        "weekday": f"{meeting.day:%A}",
        "words": f"{meeting.day:%A %-d %b}",
        "week": meeting.week,
        "version": _version(meeting),
        "notes": list(meeting.notes),
        "places": [
            {"at": f"{which}-{n}", **_place(day, meeting, place, n)}
            for n, place in enumerate(meeting.places)
        ],
    }


def _place(day: Day, meeting: Meeting, place: Place, position: int) -> dict[str, Any]:
    mark = f"{position + 1}{place.entry.superset or ''}"
    own, other = (
        None
        if one is None
        else work(day.client, *one, meeting.day, mark, day.plan.unit, meeting is day.now)
        for one in ((place.entry, place.planned), place.other)
    )
    return {"own": own, "other": other, "done_as": place.done_as}


def _version(meeting: Meeting) -> str:
    """Changes when what is planned does, not when sets are logged."""
    known = [meeting.name, *(place.entry.model_dump_json() for place in meeting.places)]
    return hashlib.sha256("\n".join(known).encode()).hexdigest()[:16]
