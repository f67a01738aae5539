"""The review as a coach reads it: one screen, plain words."""

from __future__ import annotations

from datetime import date, datetime, timedelta
from pathlib import Path
from uuid import NAMESPACE_OID, uuid5

import pytest

from setwright.handout.proposal_text import decided_text
from setwright.handout.review_text import WIDTH, review_text
from setwright.plan.client_folder import open_folder
from setwright.plan.log import Pain, Record, SetRecord
from setwright.plan.log_store import append_records
from setwright.training.decisions import decide
from setwright.training.review import review

FIRST = date(2026, 9, 7)
INTAKE = """\
setwright: intake/1
name: Ilse
experience: intermediate
age_band: 18-39
body_mass_kg: 70
screening: {active_last_3_months: yes, known_disease: no, symptoms: no}
setting: with a partner or staff
days: [{day: monday, minutes: 60}]
gym: full gym
"""
PLAN = """\
setwright: plan/1
title: One day
sessions:
  - name: Only
    day: monday
    exercises:
      - Leg press: 3 x 8-12, RIR 2-1, rest 2-3 min
      - Lat pulldown: 3 x 8-12, RIR 2-1, rest 2-3 min
"""


def records(weeks: int, pain: int) -> list[Record]:
    found: list[Record] = []
    for week in range(weeks):
        for number in range(6):
            name, load = (("leg-press", 120.0), ("lat-pulldown", 50.0))[number // 3]
            last = week == weeks - 1 and name == "leg-press" and pain
            found.append(
                SetRecord(
                    id=str(uuid5(NAMESPACE_OID, f"{week} {number}")),
                    at=datetime.combine(FIRST + timedelta(7 * week), datetime.min.time())
                    + timedelta(hours=18, minutes=4 * number),
                    exercise=name,
                    load_kg=load,
                    reps=10,
                    rir=2,
                    pain=Pain(where="knee", level=pain) if last else None,
                )
            )
    return found


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "plans").mkdir()
    (tmp_path / "intake.yaml").write_text(INTAKE, encoding="utf-8")
    (tmp_path / "plans" / "2026-09-07.yaml").write_text(PLAN, encoding="utf-8")
    return tmp_path


@pytest.mark.parametrize(("weeks", "pain"), [(0, 0), (1, 0), (5, 0), (5, 7)])
def test_one_screen(folder: Path, weeks: int, pain: int) -> None:
    append_records(folder / "log.jsonl", records(weeks, pain))
    text = review_text(review(open_folder(folder), FIRST + timedelta(7 * max(weeks - 1, 0))))
    lines = text.splitlines()
    assert len(lines) <= 50
    assert max(map(len, lines)) <= WIDTH
    assert text.isprintable() or "\x1b" not in text
    for word in ("Ilse", "Session", "Kept to", "Strength", "Parts", "Effort", "Pain", "Proposals"):
        assert word in text


def test_pain_stands_in_the_facts_and_in_the_first_proposal(folder: Path) -> None:
    append_records(folder / "log.jsonl", records(5, 7))
    found = review(open_folder(folder), FIRST + timedelta(28))
    text = review_text(found)
    assert "Leg press: knee 7 of 10 (stop and exchange). Nothing rises there." in text
    first = text.split("Proposals\n")[1].splitlines()[0]
    assert first.startswith(" 1. ")
    assert "Leg press, which hurts" in first
    assert found.proposals[0].id in first


def test_a_decided_proposal_is_shown_as_decided(folder: Path) -> None:
    append_records(folder / "log.jsonl", records(5, 7))
    found = review(open_folder(folder), FIRST + timedelta(28))
    done = decide(
        found, found.proposals[0], "decline", datetime(2026, 10, 10), because="seen by her physio"
    )
    assert "Declined" in decided_text(done)
    assert "No plan changed." in decided_text(done)
    again = review_text(review(open_folder(folder), FIRST + timedelta(28)))
    assert "declined: seen by her physio" in again.replace("\n    ", " ")


def test_what_an_accepted_change_does_is_told(folder: Path) -> None:
    append_records(folder / "log.jsonl", records(5, 7))
    found = review(open_folder(folder), FIRST + timedelta(28))
    text = decided_text(decide(found, found.proposals[0], "accept", datetime(2026, 10, 10)))
    assert "Next week's plan:" in text
    assert "2026-10-12.yaml" in text
    assert "growth" in text
