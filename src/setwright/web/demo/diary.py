"""The log of one of the demo's people: the virtual lifter's, with what went wrong lately."""

from __future__ import annotations

from datetime import date, datetime, time, timedelta
from uuid import NAMESPACE_URL, uuid5

from setwright.lab.demo_log import demo_log
from setwright.plan.intake import DAYS, Intake
from setwright.plan.log import Missed, Pain, Record, SetRecord
from setwright.plan.week import Plan
from setwright.web.demo.cast import Part


def first_monday(part: Part, today: date) -> date:
    """Monday of the first week trained."""
    return today - timedelta(today.weekday() + 7 * (part.weeks + part.away))


def diary(part: Part, intake: Intake, plan: Plan, today: date) -> tuple[Record, ...]:
    """Records until yesterday.

    Args:
        part: who, and what goes wrong.
        intake: of the client.
        plan: trained every week.
        today: nothing of it is in the log yet.
    """
    start = first_monday(part, today)
    if part.weeks == 0:
        return ()
    running = 0 if part.away or part.symptom else 1
    written = demo_log(intake, plan, part.weeks + running, part.seed, start)
    kept = [one for one in written if one.at.date() < today]
    if part.missed:
        kept = _with_missed(part, plan, kept, today)
    if part.pain:
        exercise, where, level = part.pain
        sore = _last(kept, exercise)
        kept[sore] = kept[sore].model_copy(update={"pain": Pain(where=where, level=level)})
    if part.symptom:
        last = _last(kept)
        kept[last] = kept[last].model_copy(
            update={"symptoms": (part.symptom,), "note": "sat down until it passed"}
        )
    return tuple(kept)


def _last(records: list[Record], exercise: str | None = None) -> int:
    """Place of the last set, of an exercise if one is named."""
    sets = (k for k, one in enumerate(records) if isinstance(one, SetRecord))
    return max(k for k in sets if exercise in (None, getattr(records[k], "exercise", "")))


def _with_missed(part: Part, plan: Plan, records: list[Record], today: date) -> list[Record]:
    """The last sessions of last week, and all of this one, as not done."""
    monday = today - timedelta(today.weekday() + 7)
    gone = plan.sessions[-part.missed :]
    days = {monday + timedelta(DAYS.index(one.day)): one for one in gone}
    kept: list[Record] = [
        one for one in records if one.at.date() not in days and one.at.date() < monday + _WEEK
    ]
    for day, session in days.items():
        at = datetime.combine(day, time(20, 0))
        ident = str(uuid5(NAMESPACE_URL, f"setwright demo {part.name} {day}"))
        kept.append(Missed(id=ident, at=at, session=session.name, reason="no time"))
    return kept


_WEEK = timedelta(7)
