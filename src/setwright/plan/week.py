"""The plan: a week of sessions."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from setwright.documents.base import Document
from setwright.plan.intake import Day, Load, Reps, Rir

RestS = Annotated[int, Field(ge=0, le=900)]
TempoSeconds = Annotated[float, Field(ge=0, le=20)]


class Tempo(Document):
    """Seconds lowering, at the stretched end, lifting, at the top."""

    lowering_s: TempoSeconds
    stretched_s: TempoSeconds = 0
    lifting_s: TempoSeconds
    top_s: TempoSeconds = 0


class Entry(Document):
    """One exercise of a session.

    Attributes:
        exercise: catalogue id.
        sets: working sets.
        reps: lowest and highest repetitions of the band.
        rir: repetitions in reserve on the first and on the last set.
        rest_s: shortest and longest rest between sets.
        tempo: None means controlled, at the exercise's own pace.
        partials: lengthened partials after the last full repetition of the last set, or as
            the whole of every set.
        superset: letter shared by the exercises that are alternated.
        load_kg: load of the first working set as lifted (a hand for dumbbells), or None.
    """

    exercise: str
    sets: int = Field(ge=1, le=20)
    reps: tuple[Reps, Reps]
    rir: tuple[Rir, Rir]
    rest_s: tuple[RestS, RestS]
    tempo: Tempo | None = None
    partials: Literal["after the last set", "whole sets"] | None = None
    superset: Annotated[str, Field(pattern="^[A-Z]$")] | None = None
    load_kg: Load | None = None
    note: str = Field("", max_length=300)


class Session(Document):
    """One day's work, in order."""

    name: str = Field(min_length=1, max_length=60)
    day: Day
    minutes: int | None = Field(None, ge=5, le=300, description="minutes to be had")
    exercises: tuple[Entry, ...] = Field(min_length=1, max_length=30)


class Unavoidable(Document):
    """A criterion the plan cannot meet, and the limit that binds."""

    criterion: str
    subject: str
    because: str


class Plan(Document):
    """A week of sessions for one person."""

    setwright: Literal["plan/1"]
    title: str = Field(min_length=1, max_length=120)
    person: str = Field("", max_length=80)
    unit: Literal["kg", "lb"] = "kg"
    sessions: tuple[Session, ...] = Field(min_length=1, max_length=14)
    unavoidable: tuple[Unavoidable, ...] = ()
