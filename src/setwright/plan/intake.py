"""The intake: a person's aims and limits."""

from __future__ import annotations

from datetime import date
from typing import Annotated, Literal

from pydantic import Field

from setwright.documents.base import Document
from setwright.exercises.model import Kit

Day = Literal["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"]
DAYS: tuple[Day, ...] = (
    "monday",
    "tuesday",
    "wednesday",
    "thursday",
    "friday",
    "saturday",
    "sunday",
)
Experience = Literal["beginner", "intermediate", "advanced"]
AgeBand = Literal["under 18", "18-39", "40-59", "60 and over"]
Split = Literal["auto", "full body", "upper/lower", "push/pull/legs", "body part"]
Focus = Literal[
    "full body",
    "upper",
    "lower",
    "push",
    "pull",
    "legs",
    "chest",
    "back",
    "shoulders",
    "arms",
    "trunk",
]
Load = Annotated[float, Field(ge=0, le=1000)]
Reps = Annotated[int, Field(ge=1, le=100)]
Rir = Annotated[float, Field(ge=0, le=10)]


class Screening(Document):
    """Answers that decide cautions and caps. They never diagnose."""

    active_last_3_months: bool = Field(
        description="planned exercise, 30 minutes, 3 days a week, for the last 3 months"
    )
    known_disease: bool = Field(False, description="heart, metabolic or kidney disease")
    symptoms: bool = Field(False, description="chest pain, fainting, breathlessness, and the like")
    clearance: bool = Field(False, description="a health professional has cleared training")
    cleared_on: date | None = Field(
        None, description="day of the last clearance; it speaks for symptoms logged before it"
    )
    pregnant: bool = False
    high_blood_pressure: bool = False
    osteoporosis: bool = False
    hernia: bool = False
    back_pain: bool = False
    recent_surgery: bool = False
    returning_after_break: bool = Field(False, description="four weeks or more without training")


class TrainingDay(Document):
    """One day that can be trained."""

    day: Day
    minutes: int = Field(ge=10, le=180)
    focus: Focus | None = Field(
        None, description="fixed by the coach; found by the designer when absent"
    )


class Stock(Document):
    """One kind of kit in the gym, and the loads it can make.

    Attributes:
        kit: what it is.
        bar_kg: mass of the empty bar, carriage or first plate.
        plates_kg: plates to be had, each meaning one pair (free bars, plate machines).
        from_kg: smallest load (dumbbells a hand, stacks).
        to_kg: largest load.
        step_kg: step between loads.
        loads_kg: reachable loads listed one by one, instead of from, to and step.
        unit: unit of the figures in this entry.
        pairs: for dumbbells and kettlebells, whether two of each are there.
    """

    kit: Kit
    bar_kg: Load | None = None
    plates_kg: tuple[Load, ...] = ()
    from_kg: Load | None = None
    to_kg: Load | None = None
    step_kg: Annotated[float, Field(gt=0, le=50)] | None = None
    loads_kg: tuple[Load, ...] = ()
    unit: Literal["kg", "lb"] = "kg"
    pairs: bool = True


class Avoidance(Document):
    """Something the person must not or will not do; exactly one of the first three is given."""

    exercise: str | None = None
    pattern: str | None = None
    action: str | None = Field(None, description="a joint action, for example shoulder abduction")
    reason: Literal["pain", "preference", "skill"]
    note: str = ""


class KnownLoad(Document):
    """A set the person has done: the seed of every load."""

    exercise: str
    load_kg: Load
    reps: Reps
    rir: Rir = 0


class EarlierWork(Document):
    """Training already done this week."""

    day: Day
    sets: dict[str, int] = Field(description="exercise or muscle, and its hard sets")


class Aims(Document):
    """Muscles, parts or wider groups, in the coach's words."""

    emphasise: tuple[str, ...] = ()
    maintain: tuple[str, ...] = ()
    leave_out: tuple[str, ...] = ()


class Intake(Document):
    """A person's aims and limits."""

    setwright: Literal["intake/1"]
    name: str = Field(min_length=1, max_length=80)
    experience: Experience
    age_band: AgeBand
    sex: Literal["female", "male", "unstated"] = "unstated"
    body_mass_kg: Annotated[float, Field(ge=30, le=300)] | None = None
    stature_cm: Annotated[float, Field(ge=120, le=230)] | None = None
    screening: Screening
    setting: Literal["alone", "with a partner or staff"] = "alone"
    days: tuple[TrainingDay, ...] = Field(min_length=1, max_length=7)
    split: Split = "auto"
    aims: Aims = Aims()
    gym: Literal["full gym", "home dumbbells", "machines", "bodyweight", "listed"] = "listed"
    kit: tuple[Stock, ...] = ()
    avoid: tuple[Avoidance, ...] = ()
    known_loads: tuple[KnownLoad, ...] = ()
    earlier_this_week: tuple[EarlierWork, ...] = ()
    unit: Literal["kg", "lb"] = "kg"
    seed: int = Field(1, ge=0, le=2**31 - 1)
