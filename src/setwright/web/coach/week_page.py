"""The coach's page of one week: done against planned, and what it shows."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

from setwright.anatomy.atlas import part
from setwright.handout.review_words import (
    effort_words,
    exercise_name,
    kept_words,
    left_out_words,
    odd_words,
    pain_words,
    part_sentences,
    stall_words,
    strength_words,
)
from setwright.handout.wording import number, span
from setwright.training.facts.attendance import SessionDone
from setwright.training.facts.dose import PartDose
from setwright.training.facts.strength import Change
from setwright.training.facts.week import Facts
from setwright.training.review import Review
from setwright.training.stop_signs import Caution, referral
from setwright.web.coach.entered_twice import Entered, entered_twice

AIMS: Final = {"emphasise": "emphasised", "maintain": "maintained"}


@dataclass(frozen=True)
class SessionRow:
    """One session of the plan: texts as the page shows them."""

    session: str
    planned: date
    done: str
    missed: bool
    sets: str
    minutes: str
    reason: str


@dataclass(frozen=True)
class StrengthRow:
    """Change of strength on one exercise, percent."""

    exercise: str
    percent: str
    interval: str
    days: int
    outings: int
    trend: str
    says: str


@dataclass(frozen=True)
class PartRow:
    """Fractional sets of one part, done against its target."""

    part: str
    aim: str
    target: str
    planned: str
    done: str
    standing: str
    growth: str


@dataclass(frozen=True)
class WeekPage:
    """Everything the page shows of the week itself."""

    monday: date
    sunday: date
    block_week: int
    lighter: bool
    planned: bool
    under_way: bool
    sessions: tuple[SessionRow, ...]
    kept: str
    left_out: str
    strength: str
    stalls: str
    changes: tuple[StrengthRow, ...]
    parts: tuple[str, ...]
    part_rows: tuple[PartRow, ...]
    effort: str
    pain: str
    stop: tuple[Caution, ...]
    symptoms: tuple[str, ...]
    odd: str
    twice: tuple[Entered, ...]


def week_page(found: Review) -> WeekPage:
    """The week as the page shows it."""
    facts = found.facts
    place = facts.client.block.place(facts.monday.toordinal())
    return WeekPage(
        facts.monday,
        facts.monday + timedelta(6),
        place.week,
        place.kind == "ease",
        facts.plan is not None,
        facts.under_way,
        tuple(_session(one, facts.day) for one in facts.sessions),
        kept_words(facts),
        left_out_words(facts) if facts.plan is not None else "",
        strength_words(facts),
        stall_words(facts),
        tuple(_changes(facts)),
        tuple(part_sentences(facts)),
        tuple(_part(one) for one in facts.parts),
        effort_words(facts),
        pain_words(facts),
        referral(facts.symptoms),
        facts.symptoms,
        odd_words(facts),
        entered_twice(facts),
    )


def _session(one: SessionDone, day: date) -> SessionRow:
    missed = one.done_on is None and one.planned_on <= day
    undone = "missed" if missed else "to come"
    done = undone if one.done_on is None else f"{one.done_on:%a}"
    of = f"{one.planned_minutes:.0f}"
    minutes = of if one.done_minutes is None else f"{one.done_minutes:.0f} of {of}"
    return SessionRow(
        one.session,
        one.planned_on,
        done,
        missed,
        f"{one.done_sets} of {one.planned_sets}",
        minutes,
        one.reason if one.done_on is None else "",
    )


def _changes(facts: Facts) -> list[StrengthRow]:
    fell, rose = {one.exercise for one in facts.fell}, {one.exercise for one in facts.rose}
    stalled = {one.exercise for one in facts.stalls}
    rows = []
    for one in facts.changes:
        says = "within noise"
        if one.exercise in fell:
            says = "fell"
        elif one.exercise in stalled:
            says = "stalls"
        elif one.exercise in rose:
            says = "rose"
        rows.append(_change(one, says))
    order = {"fell": 0, "stalls": 1, "rose": 2, "within noise": 3}
    return sorted(rows, key=lambda row: order[row.says])


def _change(one: Change, says: str) -> StrengthRow:
    trend = one.trend
    return StrengthRow(
        exercise_name(one.exercise),
        f"{one.percent:+.1f}",
        f"{one.low:+.1f} to {one.high:+.1f}",
        one.days,
        one.outings,
        f"{trend.percent_a_week:+.1f} ({trend.low:+.1f} to {trend.high:+.1f})",
        says,
    )


def _part(one: PartDose) -> PartRow:
    target = span(one.band.least, one.band.most, " to ") if one.band.least else "none asked"
    return PartRow(
        part(one.part).name,
        AIMS.get(one.band.aim, ""),
        target,
        number(round(one.planned, 1)),
        number(round(one.done, 1)),
        one.standing,
        f"{one.growth:.2f} ({one.low:.2f} to {one.high:.2f})",
    )
