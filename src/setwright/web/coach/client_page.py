"""The coach's page of one client: who, what to heed, what comes, how strength went."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from setwright.documents.units import from_kg
from setwright.exercises import catalogue
from setwright.handout.cautions import personal
from setwright.handout.strength_text import trend_words
from setwright.handout.wording import counted, listed, number
from setwright.plan.client_folder import ClientFolder
from setwright.plan.intake import DAYS, Intake
from setwright.rehearsal.rehearse import rehearse
from setwright.training.client import Client as Trained
from setwright.training.stop_signs import Caution
from setwright.training.strength_now import StrengthNow, strength_now
from setwright.web.coach.content import WeekAs

AHEAD_DAYS = 14
MOST_COMING = 6


@dataclass(frozen=True)
class Coming:
    """A session to come."""

    day: date
    name: str
    minutes: float
    exercises: int


@dataclass(frozen=True)
class WeekRow:
    """A week and where it stands, in words."""

    starts: date
    state: str
    now: bool


@dataclass(frozen=True)
class StrengthRow:
    """Strength on one exercise, in the client's unit."""

    exercise: str
    median: str
    interval: str
    trend: str
    sets: int
    last: date


def about(intake: Intake) -> list[tuple[str, str]]:
    """The person in short: label and words."""
    days = listed([f"{one.day.capitalize()} {one.minutes} min" for one in intake.days])
    body = [
        f"{one:g} {unit}"
        for one, unit in ((intake.stature_cm, "cm"), (intake.body_mass_kg, "kg"))
        if one is not None
    ]
    rows = [
        ("Experience", intake.experience),
        ("Age", intake.age_band),
        ("Sex", "" if intake.sex == "unstated" else intake.sex),
        ("Body", ", ".join(body)),
        ("Days", days),
        ("Split", intake.split),
        ("Emphasised", ", ".join(intake.aims.emphasise)),
        ("Maintained", ", ".join(intake.aims.maintain)),
        ("Left out", ", ".join(intake.aims.leave_out)),
        ("Trains", intake.setting),
        ("Gym", intake.gym if intake.gym != "listed" else counted(len(intake.kit), "kind")),
        ("Avoids", ", ".join(_avoided(intake))),
    ]
    return [(label, words) for label, words in rows if words]


def _avoided(intake: Intake) -> list[str]:
    found = []
    for one in intake.avoid:
        what = catalogue.exercise(one.exercise).name if one.exercise else one.pattern or one.action
        found.append(f"{what} ({one.reason})")
    return found


def cautions(intake: Intake) -> tuple[Caution, ...]:
    """What the answers of the screening ask to heed."""
    return personal(intake)


def coming(folder: ClientFolder, today: date, trained: date | None) -> list[Coming]:
    """The next sessions of the plans that were sent."""
    found = []
    for ahead in range(1 if trained == today else 0, AHEAD_DAYS):
        day = today + timedelta(ahead)
        plan = folder.plan_on(day)
        if plan is None:
            continue
        lived = rehearse(plan, folder.intake).sessions
        for session, one in zip(plan.sessions, lived, strict=True):
            if session.day == DAYS[day.weekday()]:
                found.append(Coming(day, session.name, one.total_s / 60, len(session.exercises)))
    return found[:MOST_COMING]


def week_rows(weeks: tuple[WeekAs, ...], today: date) -> list[WeekRow]:
    """Weeks, newest first; the one in force now is marked."""
    begun = [week.starts for week in weeks if week.sent is not None and week.starts <= today]
    force = max(begun, default=None)
    rows = []
    for week in sorted(weeks, key=lambda one: one.starts, reverse=True):
        if week.sent is None:
            state = "draft" if week.current else "empty"
        else:
            state = "sent" if week.sent == week.current else "sent, changed since"
        rows.append(WeekRow(week.starts, state, week.starts == force))
    return rows


def strength_rows(client: Trained) -> list[StrengthRow]:
    """Strength on every exercise of the log, most trained first."""
    unit = client.folder.intake.unit
    return [_strength(one, unit) for one in strength_now(client)]


def _strength(one: StrengthNow, unit: str) -> StrengthRow:
    figures = [
        number(round(from_kg(kg, "lb" if unit == "lb" else "kg") * 2) / 2)
        for kg in (one.lifted.median, one.lifted.low, one.lifted.high)
    ]
    return StrengthRow(
        catalogue.exercise(one.exercise).name,
        figures[0],
        f"{figures[1]} to {figures[2]}",
        trend_words(one.trend),
        one.sets,
        date.fromordinal(one.last_day),
    )
