"""A client with a plan and weeks of log, on a Wednesday that does not move."""

import uuid
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, timedelta

import pytest

from setwright.plan.intake import DAYS
from setwright.plan.log import Missed, Pain, SetRecord
from setwright.plan.read import read_plan
from setwright.web.engine.append import append_records
from setwright.web.models import Client, PlanVersion, Week

NOW = datetime(2026, 11, 25, 12, tzinfo=UTC)
TODAY = NOW.date()
THIS = date(2026, 11, 23)
LAST = THIS - timedelta(7)

PLAN = """\
setwright: plan/1
title: Two evenings
sessions:
  - name: Upper
    day: monday
    exercises:
      - Barbell bench press: 3 x 8-10, RIR 2, rest 2-3 min
      - Lat pulldown: 3 x 8-12, RIR 2, rest 2 min
      - Dumbbell curl: 3 x 10-12, RIR 1, rest 90 s
  - name: Lower
    day: thursday
    exercises:
      - Leg press: 3 x 8-12, RIR 2, rest 2-3 min
      - Seated leg curl: 3 x 8-12, RIR 2, rest 2 min
      - Standing calf raise: 3 x 10-15, RIR 1, rest 90 s
"""
LOADS = {
    "barbell-bench-press": 60.0, "lat-pulldown": 55.0, "dumbbell-curl": 12.0, "leg-press": 120.0,
    "seated-leg-curl": 45.0, "standing-calf-raise": 80.0,
}  # fmt: skip


@pytest.fixture(autouse=True)
def clock(monkeypatch):
    """Every moment is the same noon."""
    monkeypatch.setattr("django.utils.timezone.now", lambda: NOW)


def week(client: Client, monday: date, text: str = PLAN, sent: bool = True) -> Week:
    """A week with one version."""
    made = Week.objects.create(client=client, starts=monday)
    made.current = PlanVersion.objects.create(week=made, number=1, text=text, what="designed")
    if sent:
        made.sent, made.sent_at = made.current, NOW
    made.save()
    return made


@dataclass
class Story:
    """What a client did: plan in force for some weeks, all of it done but what is said."""

    client: Client
    weeks: int = 4
    missed: set[tuple[date, str]] = field(default_factory=set)
    pain: dict[tuple[date, str], int] = field(default_factory=dict)
    symptom: tuple[date, str] | None = None

    def tell(self) -> Client:
        """Send the plan and log everything up to yesterday."""
        first = THIS - timedelta(7 * self.weeks)
        week(self.client, first)
        plan = read_plan(PLAN, "plan")
        records = []
        for number in range(self.weeks + 1):
            monday = first + timedelta(7 * number)
            for session in plan.sessions:
                day = monday + timedelta(DAYS.index(session.day))
                if day >= TODAY:
                    continue
                if (monday, session.name) in self.missed:
                    at = datetime.combine(day, datetime.min.time())
                    records.append(Missed(id=_id(), at=at, session=session.name, reason="no time"))
                    continue
                records += self._sets(session, day, number)
        append_records(self.client, records, None)
        return self.client

    def _sets(self, session, day, number):
        at = datetime(day.year, day.month, day.day, 18)
        for entry in session.exercises:
            for done in range(3):
                at += timedelta(minutes=4)
                level = self.pain.get((day, entry.exercise)) if done == 2 else None
                stops = self.symptom == (day, entry.exercise) and done == 2
                yield SetRecord(
                    id=_id(),
                    at=at,
                    exercise=entry.exercise,
                    load_kg=LOADS[entry.exercise] + number,
                    reps=10 - done,
                    rir=2 - done / 2,
                    pain=Pain(where="left shoulder", level=level) if level else None,
                    symptoms=("dizziness",) if stops else (),
                )


def _id() -> str:
    return str(uuid.uuid4())


@pytest.fixture
def story(person):
    """What Oda did."""
    return Story(person)


@pytest.fixture
def hurting(story):
    """Oda, whose shoulder hurt at the bench last week."""
    story.pain = {(LAST, "barbell-bench-press"): 6}
    return story.tell()


@pytest.fixture
def open_at(open_page, live_server, coach):
    """Open an address in a real browser, signed in as the coach."""

    def opened(path: str, **wishes):
        from django.conf import settings
        from django.test import Client as Browser

        signed_in = Browser()
        signed_in.force_login(coach)
        name = settings.SESSION_COOKIE_NAME
        value = signed_in.cookies[name].value
        page = open_page(**wishes)
        page.context.add_cookies([{"name": name, "value": value, "url": live_server.url}])
        page.goto(live_server.url + path)
        return page

    return opened
