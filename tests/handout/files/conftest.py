"""An ordinary week, and one that fills every page with hostile words."""

from __future__ import annotations

from datetime import UTC, date, datetime, time
from zoneinfo import ZoneInfo

import pytest

from setwright.audit.audit import audit
from setwright.exercises import catalogue
from setwright.handout.content.build import content_of
from setwright.handout.content.model import Content
from setwright.handout.export import FORMATS, Wishes
from setwright.plan.intake import Intake
from setwright.plan.week import Entry, Plan, Session, Tempo

HOSTILE = (
    '=HYPERLINK("http://x.test") #set text(red) *b* $x$ `raw` </style><script>x</script> &amp; \\'
)
DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday")
SETS = (3, 4, 5, 2, 3, 4, 3, 3, 3, 2, 3, 6)


def _hard_session(place: int) -> Session:
    """Twelve exercises with the longest names, two supersets, every field in use."""
    longest = sorted(catalogue.exercises(), key=lambda one: (-len(one.name), one.id))
    entries = []
    for number, one in enumerate(longest[12 * place : 12 * place + 12]):
        entries.append(
            Entry(
                exercise=one.id,
                sets=SETS[number],
                reps=one.rep_band,
                rir=(2, 0.5),
                rest_s=(90, 150) if number % 2 else (75, 105),
                tempo=None
                if number % 3
                else Tempo(lowering_s=3.5, stretched_s=1, lifting_s=1.5, top_s=1),
                superset={2: "A", 3: "A", 6: "B", 7: "B", 8: "B"}.get(number),
                load_kg=102.5 if number % 4 == 0 else None,
                note=HOSTILE if number in (0, 5) else "",
            )
        )
    names = ("W" * 60, "@SUM(A1) a rather long name that a coach may well write down"[:60])
    return Session(name=names[place % 2], day=DAYS[place], minutes=75, exercises=tuple(entries))


@pytest.fixture(scope="session")
def hard() -> Plan:
    return Plan(
        setwright="plan/1",
        title=("+cmd|' /C calc'!A0 und Donaudampfschifffahrtsgesellschaftskapitänsmützen " * 2)[
            :120
        ],
        person=("-Maximiliana-Friederike von und zu Hohenlangenbach " * 2)[:80],
        sessions=tuple(_hard_session(place) for place in range(6)),
    )


@pytest.fixture(scope="session")
def hard_content(hard: Plan) -> Content:
    return content_of(hard, audit(hard), None, "coach")


@pytest.fixture(scope="session")
def client_content(plan: Plan, intake: Intake) -> Content:
    return content_of(plan, audit(plan, intake), intake, "client")


@pytest.fixture(scope="session")
def coach_content(plan: Plan, intake: Intake) -> Content:
    return content_of(plan, audit(plan, intake), intake, "coach")


@pytest.fixture(scope="session")
def wishes() -> Wishes:
    return Wishes(
        reader="client",
        formats=FORMATS,
        paper="a4",
        start=date(2026, 3, 25),
        at=time(18, 0),
        zone=ZoneInfo("Europe/Lisbon"),
        weeks=2,
        moment=datetime(2026, 3, 1, 9, 30, tzinfo=UTC),
    )
