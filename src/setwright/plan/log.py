"""The log: what was done, one record at a time, never rewritten."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import datetime
from functools import cached_property
from typing import Annotated, Literal

from pydantic import AfterValidator, Field

from setwright.documents.base import UUID_PATTERN, Document
from setwright.plan.intake import Rir
from setwright.plan.symptoms import Symptom

RecordId = Annotated[str, Field(pattern=UUID_PATTERN)]


def _wall_clock(moment: datetime) -> datetime:
    return moment.replace(tzinfo=None)


# The clock on the wall where the set was done: an offset is dropped, never converted.
LocalTime = Annotated[datetime, AfterValidator(_wall_clock)]
Note = Annotated[str, Field(max_length=500)]
Repetitions = Annotated[int, Field(ge=0, le=200)]
Unit = Literal["kg", "lb"]
Reason = Literal["no time", "pain", "equipment", "ill", "other"]


class Pain(Document):
    """Pain felt in a set: where, in the person's words, and how much, 0 to 10."""

    where: str = Field(min_length=1, max_length=60)
    level: int = Field(ge=0, le=10)


class Entered(Document):
    """What every record carries.

    Attributes:
        id: of this record; a record whose id is already in the log is not added again.
        at: when it was done, by the clock on the wall.
        note: in the person's or the coach's words.
    """

    id: RecordId
    at: LocalTime
    note: Note = ""


class SetRecord(Entered):
    """One set as it was done.

    Attributes:
        exercise: catalogue id.
        said: name as it was written, when it differs from the catalogue's.
        role: working sets count; warm-up sets do not; a drop set follows its working set.
        load_kg: as lifted: a hand for dumbbell pairs; added to body weight; below zero for
            assistance.
        unit: unit the load was written in.
        reps: full repetitions.
        partial_reps: partial repetitions after the full ones.
        number: place among this exercise's sets of the day, when the source tells.
        rir: repetitions in reserve as felt; None when not said.
        to_failure: no further repetition could be done.
        rest_s: rest taken before this set; None when not said.
        technique: technique broke down.
        symptoms: symptoms that stop training.
    """

    kind: Literal["set"] = "set"
    exercise: str = Field(min_length=1, max_length=80)
    said: str = Field("", max_length=120)
    role: Literal["working", "warm-up", "drop"] = "working"
    load_kg: float = Field(ge=-300, le=1000)
    unit: Unit = "kg"
    reps: Repetitions
    partial_reps: Repetitions = 0
    number: int | None = Field(None, ge=1, le=100)
    side: Literal["left", "right"] | None = None
    rir: Rir | None = None
    to_failure: bool = False
    rest_s: float | None = Field(None, ge=0, le=7200)
    pain: Pain | None = None
    technique: bool = False
    symptoms: tuple[Symptom, ...] = ()


class Skipped(Entered):
    """An exercise of the plan that was left out."""

    kind: Literal["skipped"] = "skipped"
    exercise: str = Field(min_length=1, max_length=80)
    reason: Reason = "other"


class Missed(Entered):
    """A whole session that was not done."""

    kind: Literal["missed"] = "missed"
    session: str = Field(min_length=1, max_length=60)
    reason: Reason = "other"


class Replaced(Entered):
    """An exercise of the plan done as another one that day."""

    kind: Literal["replaced"] = "replaced"
    exercise: str = Field(min_length=1, max_length=80)
    by: str = Field(min_length=1, max_length=80)
    reason: Reason = "other"


class BodyMass(Entered):
    """Body mass as weighed."""

    kind: Literal["body_mass"] = "body_mass"
    kg: float = Field(ge=30, le=300)


class Withdrawn(Entered):
    """An earlier record taken back; a correction is this and a new record."""

    kind: Literal["withdrawn"] = "withdrawn"
    of: RecordId


Record = Annotated[
    SetRecord | Skipped | Missed | Replaced | BodyMass | Withdrawn, Field(discriminator="kind")
]


@dataclass(frozen=True)
class Log:
    """Every record of a log, in the order of the file.

    Attributes:
        records: whole records, withdrawn ones among them.
        notes: what the reader has to say about the file, for example a torn line.
    """

    records: tuple[Record, ...] = ()
    notes: tuple[str, ...] = field(default=())

    @cached_property
    def ids(self) -> frozenset[str]:
        """Ids of all records."""
        return frozenset(record.id for record in self.records)

    def standing(self) -> tuple[Record, ...]:
        """Records that hold: not withdrawn, by time, then by set number, then as written."""
        return self._standing

    @cached_property
    def _standing(self) -> tuple[Record, ...]:
        gone = {record.of for record in self.records if isinstance(record, Withdrawn)}
        kept = [r for r in self.records if r.id not in gone and not isinstance(r, Withdrawn)]
        return tuple(sorted(kept, key=_order))

    def standing_ids(self) -> tuple[str, ...]:
        """Ids of the records that hold, the last one written last."""
        held = {record.id for record in self.standing()}
        return tuple(record.id for record in self.records if record.id in held)

    def sets(self) -> tuple[SetRecord, ...]:
        """Sets that hold, in time order."""
        return tuple(record for record in self.standing() if isinstance(record, SetRecord))


def _order(record: Record) -> tuple[datetime, int]:
    number = record.number if isinstance(record, SetRecord) else None
    return record.at, number or 0


def log_of(records: Iterable[Record]) -> Log:
    """A log of records made in memory; a second record of the same id is left out."""
    first: dict[str, Record] = {}
    for record in records:
        first.setdefault(record.id, record)
    return Log(tuple(first.values()))
