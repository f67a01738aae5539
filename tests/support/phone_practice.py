"""A client of an invented practice with a week that was sent and sets of a week before."""

from __future__ import annotations

import uuid
from datetime import UTC, date, datetime, timedelta

from django.utils import timezone

from setwright.plan.log import SetRecord
from setwright.plan.log_store import line_of
from setwright.web.models import Account, Client, LogEntry, PlanVersion, Week

DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
PLAN = """\
setwright: plan/1
title: Two days at Tidewater Hall
person: Oda
sessions:
  - name: Push
    day: {first}
    exercises:
      - barbell-bench-press, 3 x 6-10, RIR 2-1, rest 2-3 min
      - one-arm-dumbbell-row, 2 x 8-12, RIR 2-1, rest 90-120 s
      - cable-lateral-raise, 2 x 10-15, RIR 1, rest 60-90 s, superset A
      - triceps-pushdown, 2 x 10-15, RIR 1, rest 60-90 s, superset A
  - name: Legs
    day: {second}
    exercises:
      - leg-press, 3 x 8-12, RIR 2-1, rest 2-3 min
      - seated-leg-curl, 3 x 10-12, RIR 1, rest 90-120 s
"""


def today() -> date:
    return datetime.now(UTC).date()


def plan_text(first: int | None = None, second: int | None = None) -> str:
    """The week, its first session on a weekday, by default today's; sorted by the days."""
    first = today().weekday() if first is None else first
    second = (first + 2) % 7 if second is None else second
    return PLAN.format(first=DAYS[first], second=DAYS[second])


def send_week(client: Client, text: str, starts: date | None = None) -> Week:
    """A week of the client, sent."""
    monday = starts or today() - timedelta(days=today().weekday())
    week = Week.objects.create(client=client, starts=monday)
    version = PlanVersion.objects.create(week=week, number=1, text=text, what="written")
    week.current = week.sent = version
    week.sent_at = timezone.now()
    week.save()
    return week


def log_bench(
    client: Client,
    days_ago: int = 7,
    load_kg: float = 60.0,
    reps: tuple[int, ...] = (9, 8, 8),
) -> None:
    """Sets of the bench press some days ago."""
    at = datetime.combine(today() - timedelta(days=days_ago), datetime.min.time())
    for number, done in enumerate(reps, start=1):
        record = SetRecord(
            id=str(uuid.uuid4()),
            at=at + timedelta(hours=18, minutes=4 * number),
            exercise="barbell-bench-press",
            load_kg=load_kg,
            reps=done,
            rir=2 if done else None,
            number=number,
        )
        LogEntry.objects.create(
            client=client, record_id=record.id, at=record.at.isoformat(), text=line_of(record)
        )


def a_set(number: int = 1, exercise: str = "barbell-bench-press", **fields: object) -> dict:
    """A set as the phone sends it."""
    return {
        "kind": "set",
        "id": str(uuid.uuid4()),
        "at": f"{today().isoformat()}T00:0{number}:00",
        "exercise": exercise,
        "load_kg": 60,
        "unit": "kg",
        "reps": 8,
        "rir": 1,
        "number": number,
    } | fields


def as_person(http, person: Client) -> Account:
    assert person.account is not None
    http.force_login(person.account)
    return person.account
