"""A client with a week that was sent and another that is a draft."""

from datetime import UTC, date, datetime
from importlib.resources import files

import pytest

from setwright.web.models import PlanVersion, Week

MONDAY, NEXT = date(2026, 9, 7), date(2026, 9, 14)


def plan_text(name="oona-week"):
    found = files("setwright.web.demo").joinpath("people", f"{name}.yaml")
    return found.read_text(encoding="utf-8")


def week_of(client, monday, text, sent):
    week = Week.objects.create(client=client, starts=monday)
    week.current = PlanVersion.objects.create(week=week, number=1, text=text, what="designed")
    if sent:
        week.sent, week.sent_at = week.current, datetime(2026, 9, 6, 12, tzinfo=UTC)
    week.save()
    return week


@pytest.fixture
def week(person):
    return week_of(person, MONDAY, plan_text(), sent=True)


@pytest.fixture
def draft(person):
    return week_of(person, NEXT, plan_text().replace("A week for", "Another week for"), sent=False)
