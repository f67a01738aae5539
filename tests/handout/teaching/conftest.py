"""The teaching documents of an ordinary week and of one full of hostile words."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from setwright.exercises import catalogue
from setwright.handout.teaching.build import teaching
from setwright.handout.teaching.content import Teaching
from setwright.plan.intake import Intake
from setwright.plan.week import Entry, Plan, Session, Unavoidable

HOSTILE = (
    "#set text(red) *b* _i_ $x$ `raw` </style><script>x</script> &amp; \\ [l](http://x.test) | "
    "![p](y) <img src=x onerror=y> www.x.test"
)
DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday")


@pytest.fixture(scope="session")
def moment() -> datetime:
    return datetime(2026, 3, 2, 12, tzinfo=UTC)


@pytest.fixture(scope="session")
def full(plan: Plan, intake: Intake) -> Teaching:
    return teaching(plan, intake)


@pytest.fixture(scope="session")
def short(plan: Plan, intake: Intake) -> Teaching:
    return teaching(plan, intake, "short")


@pytest.fixture(scope="session")
def hard() -> Plan:
    """Six days of twelve exercises with the longest names, every word of the coach hostile."""
    longest = sorted(catalogue.exercises(), key=lambda one: (-len(one.name), one.id))
    sessions = []
    for place, day in enumerate(DAYS):
        entries = tuple(
            Entry(
                exercise=one.id,
                sets=6 if number == 11 else 2,
                reps=one.rep_band,
                rir=(2, 0.5),
                rest_s=(75, 105),
                superset={2: "A", 3: "A"}.get(number),
                note=HOSTILE if number == 0 else "",
            )
            for number, one in enumerate(longest[12 * place : 12 * place + 12])
        )
        name = ("W" * 60, HOSTILE[:60])[place % 2]
        sessions.append(Session(name=name, day=day, minutes=75, exercises=entries))
    return Plan(
        setwright="plan/1",
        title=HOSTILE[:120],
        person=("-Maximiliana-Friederike von und zu Hohenlangenbach " * 2)[:80],
        sessions=tuple(sessions),
        unavoidable=(Unavoidable(criterion="time", subject="W | <b>", because=HOSTILE),),
    )


@pytest.fixture(scope="session")
def hard_full(hard: Plan) -> Teaching:
    return teaching(hard)
