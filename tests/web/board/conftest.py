"""A week on the board of the invented client."""

from datetime import date

import pytest

from setwright.web.models import PlanVersion, Week

MONDAY = date(2026, 9, 7)
PLAN = """\
setwright: plan/1
title: A week for Oda
person: Oda
unit: kg
sessions:
  - name: Full body
    day: monday
    minutes: 60
    exercises:
      - Back squat: 3 x 6-8, RIR 2-1, rest 150-180 s, 80 kg
      - Barbell bench press: 3 x 6-10, RIR 2-1, rest 120-150 s, superset A
      - Machine row: 3 x 8-10, RIR 2-1, rest 120-150 s, superset A
      - Lateral raise: 2 x 10-15, RIR 1-0, rest 90-120 s
  - name: Upper body
    day: thursday
    minutes: 60
    exercises:
      - Lat pulldown: 3 x 8-10, RIR 2-1, rest 120-150 s
      - Dumbbell curl: 2 x 10-12, RIR 1-0, rest 90-120 s
"""


@pytest.fixture
def week(person, coach):
    """A week with one version on the board."""
    made = Week.objects.create(client=person, starts=MONDAY)
    version = PlanVersion.objects.create(
        week=made, number=1, text=PLAN, what="the first plan", made_by=coach
    )
    made.current = version
    made.save()
    return made


@pytest.fixture
def at(week):
    """Address of something of the week."""
    from django.urls import reverse

    def address(name: str = "board") -> str:
        return reverse(name, args=(week.client_id, week.starts))

    return address


@pytest.fixture
def open_board(open_page, live_server, coach, week, at):
    """Open the board in a real browser, signed in as the coach."""

    def opened(query: str = "", **wishes):
        from django.conf import settings
        from django.test import Client

        client = Client()
        client.force_login(coach)
        page = open_page(**wishes)
        page.context.add_cookies(
            [
                {
                    "name": settings.SESSION_COOKIE_NAME,
                    "value": client.cookies[settings.SESSION_COOKIE_NAME].value,
                    "url": live_server.url,
                }
            ]
        )
        page.goto(live_server.url + at() + query)
        return page

    return opened
