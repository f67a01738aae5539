"""A program that acts for the coach, and a week of a client."""

import json
from datetime import date

import pytest

from setwright.web.api.tokens import make_token
from setwright.web.models import PlanVersion, Week

PLAN = """\
setwright: plan/1
title: One day
sessions:
  - name: Whole
    day: monday
    minutes: 45
    exercises:
      - Leg press: 3 x 8-12, RIR 2, rest 120 s
"""


class Program:
    """Sends JSON with a token and gives status and answer."""

    def __init__(self, client, token):
        self._client, self._token = client, token

    def __call__(self, method, path, data=None):
        answer = self._client.generic(
            method,
            f"/api/v1{path}",
            "" if data is None else json.dumps(data),
            "application/json",
            headers={"Authorization": f"Bearer {self._token}"} if self._token else {},
        )
        return answer.status_code, json.loads(answer.content) if answer.content else None


@pytest.fixture
def token(coach):
    return make_token(coach, "spreadsheet")


@pytest.fixture
def program(client, token):
    return Program(client, token)


@pytest.fixture
def week(person):
    week = Week.objects.create(client=person, starts=date(2026, 9, 7))
    week.current = PlanVersion.objects.create(week=week, number=1, text=PLAN, what="designed")
    week.sent = week.current
    week.save()
    return week
