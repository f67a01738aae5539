"""A week designed around exercises that must stay."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner

from setwright.audit.criteria.spine import MOST_SESSION
from setwright.cli.main import commands
from setwright.design.design import design
from setwright.documents.errors import DocumentError
from setwright.exercises import catalogue
from setwright.plan.intake import Intake
from setwright.plan.read import read_any_plan, read_intake
from setwright.plan.week import Plan
from setwright.plan.write import write_plan
from setwright.rehearsal.rehearse import rehearse

SECONDS = 2.0
INTAKE = """\
setwright: intake/1
name: Oda
experience: intermediate
age_band: 18-39
screening: {active_last_3_months: yes}
days: [monday 45 min, thursday 45 min]
gym: full gym
"""
KEEP = """\
setwright: plan/1
title: What stays
sessions:
  - name: Heavy day
    day: monday
    exercises:
      - Back squat: 5 x 4-5, RIR 3-2, rest 200-220 s, 90 kg, note as last week
      - Barbell curl: 1 x 12-15, RIR 2-2, rest 60-70 s, superset C
      - Triceps pushdown: 1 x 12-15, RIR 2-2, rest 60-70 s, superset C
  - name: Light day
    day: thursday
    exercises:
      - Back squat: 2 x 12-15, RIR 4-4, rest 100-110 s, superset A
"""


@pytest.fixture(scope="module")
def person() -> Intake:
    return read_intake(INTAKE, "intake")


@pytest.fixture(scope="module")
def kept() -> Plan:
    return read_any_plan(KEEP.replace(", superset A", ""), "keep")


@pytest.fixture(scope="module")
def designed(person: Intake, kept: Plan) -> Plan:
    return design(person, SECONDS, keep=kept).plan


def on(plan: Plan, day: str) -> dict:
    return {
        entry.exercise: entry
        for session in plan.sessions
        if session.day == day
        for entry in session.exercises
    }


def test_what_stays_stands_as_it_stood(designed: Plan, kept: Plan) -> None:
    for session in kept.sessions:
        there = on(designed, session.day)
        for entry in session.exercises:
            assert there[entry.exercise].model_copy(update={"superset": None}) == entry.model_copy(
                update={"superset": None}
            )
    assert [session.name for session in designed.sessions] == ["Heavy day", "Light day"]


def test_a_superset_that_stays_is_whole(designed: Plan) -> None:
    monday = on(designed, "monday")
    letters = [entry.superset for entry in monday.values()]
    letter = monday["barbell-curl"].superset
    assert letter is not None and letter == monday["triceps-pushdown"].superset
    places = [place for place, one in enumerate(letters) if one == letter]
    assert len(places) == 2 and places[1] == places[0] + 1
    assert monday["back-squat"].superset is None


def test_the_rest_is_designed_and_keeps_the_limits(designed: Plan, kept: Plan) -> None:
    assert sum(len(one.exercises) for one in designed.sessions) > 6
    for session, lived in zip(designed.sessions, rehearse(designed).sessions, strict=True):
        assert lived.total_s <= 60 * 45 * 1.02
        assert len({entry.exercise for entry in session.exercises}) == len(session.exercises)
        spine = sum(
            entry.sets * catalogue.profile(entry.exercise).spinal_load
            for entry in session.exercises
        )
        assert spine <= MOST_SESSION


def test_what_fills_the_day_alone_leaves_no_room(person: Intake) -> None:
    many = read_any_plan(
        "setwright: plan/1\ntitle: t\nsessions:\n- name: All\n  day: monday\n  exercises:\n"
        "  - Back squat: 8 x 5-6, RIR 2-1, rest 240-300 s\n"
        "  - Deadlift: 6 x 5-6, RIR 2-1, rest 240-300 s\n",
        "keep",
    )
    found = design(person, SECONDS, keep=many).plan
    assert set(on(found, "monday")) == {"back-squat", "deadlift"}
    assert on(found, "thursday")


def test_same_order_same_week(person: Intake, kept: Plan, designed: Plan) -> None:
    assert write_plan(design(person, SECONDS, keep=kept).plan) == write_plan(designed)


def test_on_the_command_line(tmp_path: Path) -> None:
    for name, text in (("intake.yaml", INTAKE), ("keep.yaml", KEEP.replace(", superset A", ""))):
        (tmp_path / name).write_text(text, "utf-8")
    out = tmp_path / "plan.yaml"
    asked = ["design", str(tmp_path / "intake.yaml"), "--seconds", "1"]
    asked += ["--keep", str(tmp_path / "keep.yaml"), "-o", str(out)]
    done = CliRunner().invoke(commands, asked)
    assert done.exit_code == 0, done.output
    assert "Back squat: 5 x 4-5, RIR 3-2" in out.read_text("utf-8")


def test_a_day_that_is_not_trained_is_refused(person: Intake, kept: Plan) -> None:
    sessions = (kept.sessions[0].model_copy(update={"day": "sunday"}),)
    with pytest.raises(DocumentError, match="sunday"):
        design(person, SECONDS, keep=kept.model_copy(update={"sessions": sessions}))
