"""A plan written as a workbook and imported again is the same plan."""

from datetime import date, datetime
from io import BytesIO
from pathlib import Path
from types import SimpleNamespace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl import Workbook

from setwright.audit.audit import audit
from setwright.exercises.catalogue import ids
from setwright.handout.content.build import content_of
from setwright.handout.workbook.build import workbook
from setwright.handout.workbook.sessions import sessions_sheet
from setwright.plan.foreign.importing import import_plan
from setwright.plan.intake import DAYS
from setwright.plan.read import read_any_plan
from setwright.plan.week import Entry, Plan, Session, Tempo

EXAMPLES = Path(__file__).parents[2] / "examples"
LB = 0.45359237
HALVES = st.integers(0, 8).map(lambda halves: halves / 2)
NAMES = st.sampled_from(["Upper", "Lower A", "Push, pulls first", "Legs (heavy)", "=Oberkörper"])
NOTES = st.sampled_from(["", "slow down", "=1+1", "-", "@home", "3x8 felt easy", "RIR 1, rest 9 s"])


def band(low: int, high: int, step: int = 1):
    return st.tuples(*[st.integers(low, high).map(lambda one: one * step)] * 2).map(
        lambda pair: tuple(sorted(pair))
    )


ENTRIES = st.builds(
    Entry,
    exercise=st.sampled_from(ids()),
    sets=st.integers(1, 8),
    reps=band(1, 30),
    rir=st.tuples(HALVES, HALVES),
    rest_s=band(0, 20, 15),
    tempo=st.none()
    | st.builds(Tempo, lowering_s=HALVES, stretched_s=HALVES, lifting_s=st.just(1.0), top_s=HALVES),
    partials=st.sampled_from([None, "after the last set", "whole sets"]),
    load_kg=st.none() | st.integers(1, 400).map(lambda one: one / 2),
    note=NOTES,
)


@st.composite
def plans(draw):
    unit = draw(st.sampled_from(["kg", "lb"]))
    sessions = []
    for day in draw(st.lists(st.sampled_from(DAYS), min_size=1, max_size=3, unique=True)):
        groups = draw(st.lists(st.lists(ENTRIES, min_size=1, max_size=2), min_size=1, max_size=3))
        entries = []
        for letter, group in zip("ABC", groups, strict=False):
            shared = letter if len(group) > 1 else None
            for one in group:
                load = one.load_kg * LB if one.load_kg is not None and unit == "lb" else one.load_kg
                entries.append(one.model_copy(update={"superset": shared, "load_kg": load}))
        minutes = draw(st.none() | st.integers(5, 300))
        sessions.append(
            Session(name=draw(NAMES), day=day, minutes=minutes, exercises=tuple(entries))
        )
    return Plan(
        setwright="plan/1",
        title=draw(st.sampled_from(["Four days", "A block: heavy", "Plan 2"])),
        person=draw(st.sampled_from(["", "Marit"])),
        unit=unit,
        sessions=tuple(sessions),
    )


def there_and_back(plan: Plan):
    content = content_of(plan, audit(plan), None, "coach")
    data = workbook(plan, content, date(2026, 3, 2), "a4", datetime(2026, 3, 1))
    return import_plan(data, "plan.xlsx")


def by_sessions_sheet(plan: Plan):
    """Only the sheet that holds the plan; the rest costs a second a plan."""
    book = Workbook()
    sessions = [SimpleNamespace(lines=()) for _ in plan.sessions]
    sessions_sheet(book.active, plan, SimpleNamespace(sessions=sessions), "a4")
    into = BytesIO()
    book.save(into)
    return import_plan(into.getvalue(), "plan.xlsx")


@pytest.mark.parametrize("name", ["plan.yaml", "plan.txt"])
def test_the_examples_come_back(name) -> None:
    plan = read_any_plan((EXAMPLES / name).read_text(encoding="utf-8"), name)
    reading = there_and_back(plan)
    assert not reading.attention
    assert reading.plan == plan


def test_an_exercise_twice_in_a_row_stays_twice() -> None:
    entries = tuple(
        Entry(exercise="leg-press", sets=sets, reps=(5, 5), rir=(0.0, 0.0), rest_s=(0, 0))
        for sets in (1, 2)
    )
    session = Session(name="Lower", day="monday", minutes=None, exercises=entries)
    plan = Plan(setwright="plan/1", title="Twice", sessions=(session,))
    assert by_sessions_sheet(plan).plan == plan


@given(plans())
@settings(max_examples=80, derandomize=True, deadline=None)
def test_any_plan_comes_back(plan) -> None:
    reading = by_sessions_sheet(plan)
    assert not reading.attention
    assert reading.plan == plan


def test_every_exercise_comes_back_by_its_name() -> None:
    week = ids()
    for start in range(0, len(week), 25):
        entries = tuple(
            Entry(exercise=one, sets=1, reps=(8, 10), rir=(1.0, 2.0), rest_s=(60, 75))
            for one in week[start : start + 25]
        )
        session = Session(name="All", day="monday", exercises=entries)
        plan = Plan(setwright="plan/1", title="All of them", sessions=(session,))
        assert by_sessions_sheet(plan).plan == plan
