"""One typed line of the log: ``back squat 100 x 5 @2``, ``skip dip because no time``, and more."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from pydantic import ValidationError

from setwright.documents.errors import DocumentError, Fault
from setwright.documents.units import Unit, to_kg
from setwright.documents.validation import explained
from setwright.exercises.catalogue import exercise
from setwright.plan.amounts import AmountError, number
from setwright.plan.done_several import TIMES, read_sets_text
from setwright.plan.done_words import SaidLoad, load_kg, read_said_load
from setwright.plan.log import BodyMass, Missed, Record, Replaced, SetRecord, Skipped, Withdrawn
from setwright.plan.naming import UnsureNameError, exercise_id

LINE_FORM = (
    "`exercise load x reps`, for example `back squat 100 x 5 @2`; `skip NAME because no time`; "
    "`replace NAME by NAME because pain`; `miss SESSION because ill`; `body mass 82.5`; "
    "`withdraw last` or `withdraw ID`"
)
REASONS = {
    "no time": "no time", "time": "no time", "pain": "pain", "equipment": "equipment",
    "kit": "equipment", "busy": "equipment", "taken": "equipment", "ill": "ill", "sick": "ill",
    "illness": "ill",
}  # fmt: skip
_BECAUSE = r"(?:\s*(?:because(?: of)?|:|,)\s*(?P<reason>.+))?"
_SKIP = re.compile(rf"(?:skip|skipped)\s+(?P<what>.+?){_BECAUSE}\Z", re.IGNORECASE)
_MISS = re.compile(rf"(?:miss|missed)\s+(?P<what>.+?){_BECAUSE}\Z", re.IGNORECASE)
_REPLACE = re.compile(
    rf"(?:replace|replaced|swap|swapped)\s+(?P<what>.+?)\s+(?:by|with|for)\s+(?P<by>.+?){_BECAUSE}\Z",
    re.IGNORECASE,
)
_MASS = re.compile(
    r"(?:body\s*mass|body\s*weight|weighed)\s*:?\s*(?P<kg>\d{2,3}(?:[.,]\d+)?)\s*(?P<unit>kg|lbs?)?\Z",
    re.IGNORECASE,
)
_WITHDRAW = re.compile(r"(?:withdraw|withdrawn)\s+(?P<id>last|[0-9a-f-]{4,36})\Z", re.IGNORECASE)


@dataclass(frozen=True)
class Entering:
    """What a typed line leaves open.

    Attributes:
        at: when it was done.
        unit: unit of figures that carry none.
        new_id: gives the id of each record.
        said: fields that hold for every set of the line, for example rest_s.
        known: ids of the records that can be withdrawn, the latest last.
    """

    at: datetime
    unit: Unit
    new_id: Callable[[], str]
    said: dict[str, Any]
    known: tuple[str, ...] = ()


def read_log_line(text: str, entering: Entering, name: str, line: int = 1) -> tuple[Record, ...]:
    """The records that a typed line means.

    Args:
        text: the line.
        entering: time, unit and ids.
        name: of the source, for messages.
        line: number of the line, for messages.

    Raises:
        DocumentError: with what is wrong and what is allowed.
    """
    try:
        return _records(text.strip(), entering)
    except _LineError as fault:
        column = text.find(fault.found) + 1 if fault.found else 0
        found = repr(fault.found) if fault.found else "nothing"
        raise DocumentError(
            name, (Fault(fault.field, found, fault.allowed, line, column or None),)
        ) from None
    except ValidationError as error:
        faults = tuple(Fault(*one, line) for one in explained(error))
        raise DocumentError(name, faults) from None


class _LineError(Exception):
    def __init__(self, field: str, found: str, allowed: str) -> None:
        super().__init__(found)
        self.field, self.found, self.allowed = field, found, allowed


def _records(text: str, entering: Entering) -> tuple[Record, ...]:
    base: dict[str, Any] = {"at": entering.at}
    note = entering.said.get("note", "")
    if match := _MASS.match(text):
        unit: Unit = "lb" if (match["unit"] or entering.unit).lower().startswith("lb") else "kg"
        kilos = round(to_kg(number(match["kg"]), unit), 3)
        return (BodyMass(id=entering.new_id(), kg=kilos, note=note, **base),)
    if match := _WITHDRAW.match(text):
        return (
            Withdrawn(
                id=entering.new_id(), of=_known(match["id"].lower(), entering), note=note, **base
            ),
        )
    if match := _REPLACE.match(text):
        base |= {"id": entering.new_id(), **_reason(match["reason"], note)}
        return (Replaced(exercise=_exercise(match["what"]), by=_exercise(match["by"]), **base),)
    if match := _SKIP.match(text):
        base |= {"id": entering.new_id(), **_reason(match["reason"], note)}
        return (Skipped(exercise=_exercise(match["what"]), **base),)
    if match := _MISS.match(text):
        base |= {"id": entering.new_id(), **_reason(match["reason"], note)}
        return (Missed(session=match["what"].strip(), **base),)
    return _sets(text, entering)


def _reason(words: str | None, note: str) -> dict[str, str]:
    said = (words or "").strip().rstrip(".")
    reason = REASONS.get(said.lower())
    if reason is not None or not said:
        return {"reason": reason or "other", "note": note}
    return {"reason": "other", "note": f"{said}; {note}" if note else said}


def _sets(text: str, entering: Entering) -> tuple[SetRecord, ...]:
    if TIMES.search(text) is None:
        raise _LineError("line", text, LINE_FORM)
    try:
        done = read_sets_text(text)
        words, said = _name_and_load(done.head or "")
        ident = _exercise(words)
        kilos = _load(said, ident, entering.unit)
    except AmountError as error:
        found = error.args[1] if len(error.args) > 1 else text
        raise _LineError("set", found, str(error.args[0])) from None
    counts, tail = done.counts, done.tail
    unit: Unit = (said.unit if said else None) or entering.unit
    same = {"at": entering.at, "exercise": ident, "load_kg": kilos, "unit": unit}
    same |= entering.said | tail.fields
    if words.casefold() not in (ident, exercise(ident).name.casefold()):
        same["said"] = words
    return tuple(
        SetRecord.model_validate(
            {**same, "id": entering.new_id(), "reps": full, "partial_reps": partial}
            | ({} if tail.rirs is None else {"rir": tail.rirs[place]})
        )
        for place, (full, partial) in enumerate(counts)
    )


def _load(said: SaidLoad | None, ident: str, unit: Unit) -> float:
    if said is not None:
        return load_kg(said, ident, unit)
    if exercise(ident).loading not in ("bodyweight", "band"):
        raise AmountError("a load before the x, for example `100 x 5`")
    return 0.0


def _name_and_load(head: str) -> tuple[str, SaidLoad | None]:
    """The exercise's words, and the load: the longest end that reads as one."""
    starts = [match.start() for match in re.finditer(r"(?<=\s)\S", head)]
    for start in starts:
        try:
            return head[:start].strip(" ,:"), read_said_load(head[start:])
        except AmountError:
            continue
    return head.strip(" ,:"), None


def _known(words: str, entering: Entering) -> str:
    """The id meant by ``last`` or by the beginning of an id."""
    if words == "last" and entering.known:
        return entering.known[-1]
    found = [ident for ident in entering.known if ident.startswith(words)]
    if len(found) != 1:
        how = "several records begin so" if found else "no such record stands in the log"
        raise _LineError("withdraw", words, f"`last` or the id of one record ({how})")
    return found[0]


def _exercise(words: str) -> str:
    try:
        return exercise_id(words.strip(" ,:"))
    except UnsureNameError as error:
        raise _LineError("exercise", words, str(error)) from None
