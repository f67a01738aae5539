"""`setwright next` and `setwright strength` on a client's folder."""

from __future__ import annotations

import json
import subprocess
import sys
from datetime import datetime, timedelta
from pathlib import Path
from uuid import UUID

import pytest
from click.testing import CliRunner

from setwright.cli.main import commands

INTAKE = """\
setwright: intake/1
name: Mara
experience: intermediate
age_band: 18-39
body_mass_kg: 70
screening: {active_last_3_months: true}
setting: with a partner or staff
days:
- {day: monday, minutes: 60}
- {day: thursday, minutes: 60}
gym: full gym
"""
PLAN = """\
setwright: plan/1
title: Two days
sessions:
- name: Pull
  day: monday
  exercises:
  - Lat pulldown 3 x 8-12, RIR 2, rest 2-3 min
  - Dumbbell curl 2 x 10-15, RIR 1, rest 1.5-2 min
- name: Push
  day: thursday
  exercises:
  - Barbell bench press 3 x 6-10, RIR 2, rest 2-3 min
"""
START = datetime(2026, 9, 7, 18, 0)


def run(*words: str | Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "setwright", *map(str, words)],
        capture_output=True,
        text=True,
        encoding="utf-8",
        timeout=60,
        check=False,
    )


def said(*words: str) -> str:
    """What a command prints, without a process of its own."""
    done = CliRunner().invoke(commands, words)
    assert done.exit_code == 0, done.output
    return done.stdout


class Log:
    """Lines of a log, written set by set."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.count = 0

    def set(self, day: int, minute: int, exercise: str, load: float, reps: int, **more) -> None:
        self.count += 1
        at = START + timedelta(days=day, minutes=minute)
        record = {
            "kind": "set", "id": str(UUID(int=self.count)), "at": at.isoformat(),
            "exercise": exercise, "load_kg": load, "reps": reps, "rir": 2, **more,
        }  # fmt: skip
        with (self.folder / "log.jsonl").open("a", encoding="utf-8") as file:
            file.write(json.dumps(record) + "\n")

    def weeks(self, count: int) -> None:
        for week in range(count):
            for number in range(3):
                self.set(7 * week, 4 * number, "lat-pulldown", 50, 10)
            for number in range(3):
                self.set(7 * week + 3, 4 * number, "barbell-bench-press", 60, 8)


@pytest.fixture
def log(tmp_path: Path) -> Log:
    (tmp_path / "plans").mkdir()
    (tmp_path / "intake.yaml").write_text(INTAKE, encoding="utf-8")
    (tmp_path / "plans" / "2026-09-07.yaml").write_text(PLAN, encoding="utf-8")
    return Log(tmp_path)


def test_the_session_to_come(log):
    log.weeks(3)
    done = run("next", log.folder, "--today", "2026-09-28")
    assert done.returncode == 0, done.stderr
    assert "Pull, Monday 2026-09-28, week 4" in done.stdout
    assert "Lat pulldown" in done.stdout
    assert "warm-up" in done.stdout
    assert "50 kg" in done.stdout
    answer = json.loads(run("next", log.folder, "--today", "2026-09-28", "--json").stdout)
    first = answer["session"]["exercises"][0]["prescribed"]
    assert first["exercise"] == "lat-pulldown"
    assert first["because"]
    assert len(first["sets"]) == 3


def test_without_a_log_loads_are_found_by_feel(log):
    done = run("next", log.folder, "--today", "2026-09-07")
    assert done.returncode == 0, done.stderr
    assert "by feel" in done.stdout


def test_the_next_set_after_a_logged_one(log):
    log.weeks(3)
    log.set(21, 0, "lat-pulldown", 50, 10)
    step = json.loads(run("next", log.folder, "--today", "2026-09-28", "--json").stdout)["step"]
    assert step["number"] == 2
    assert step["load_kg"] == 50
    assert 120 <= step["rest_s"] <= 360
    text = run("next", log.folder, "--today", "2026-09-28").stdout
    assert "Lat pulldown, set 2 of 3" in text
    for minute in (4, 8):
        log.set(21, minute, "lat-pulldown", 50, 9)
    assert "Next: Dumbbell curl" in run("next", log.folder, "--today", "2026-09-28").stdout


def test_a_symptom_ends_the_session_and_shows_who_to_ask(log):
    log.weeks(2)
    log.set(14, 0, "lat-pulldown", 50, 10)
    log.set(14, 4, "lat-pulldown", 50, 4, symptoms=["chest pain"])
    during = run("next", log.folder, "--today", "2026-09-21").stdout
    assert "no further set" in during
    assert "emergency services" in during
    later = run("next", log.folder, "--today", "2026-09-24").stdout
    assert "licensed professional" in later
    assert "kg" not in later


def test_pain_is_never_answered_with_more(log):
    log.weeks(2)
    pain = {"where": "elbow", "level": 3}
    for number in range(3):
        log.set(14, 4 * number, "lat-pulldown", 50, 12, rir=4, pain=pain)
    answer = json.loads(run("next", log.folder, "--today", "2026-09-28", "--json").stdout)
    sets = answer["session"]["exercises"][0]["prescribed"]["sets"]
    assert all(one["load_kg"] <= 50 for one in sets)


def test_a_missed_session_is_said(log):
    log.weeks(1)
    text = run("next", log.folder, "--today", "2026-09-16").stdout
    assert "Missed this week: Pull" in text


def test_faults_are_messages(log, tmp_path):
    early = run("next", log.folder, "--today", "2026-09-01")
    assert early.returncode == 2
    assert "no plan in force" in early.stderr
    none = run("next", tmp_path / "nobody")
    assert none.returncode == 2
    other = run("next", log.folder, "--today", "2026-09-07", "--exercise", "leg press")
    assert other.returncode == 2
    assert "lat-pulldown" in other.stderr


def test_strength_says_what_is_known_and_no_more(log):
    log.weeks(1)
    early = run("strength", log.folder, "--today", "2026-09-14").stdout
    assert "too few calls" in early
    for week in range(1, 5):
        for number in range(3):
            log.set(7 * week, 4 * number, "lat-pulldown", 50, 10)
    text = run("strength", log.folder, "--today", "2026-10-06", "--exercise", "lat pulldown").stdout
    assert "1RM-equivalent" in text
    assert "Lat pulldown" in text
    assert "Barbell bench press" not in text
    (row,) = json.loads(
        run(
            "strength", log.folder, "--today", "2026-10-06", "--exercise", "lat pulldown", "--json"
        ).stdout
    )
    assert row["lifted"]["low"] < row["lifted"]["median"] < row["lifted"]["high"]
    assert row["lifted"]["median"] > 50
    assert row["calls"] == 15
    assert row["honesty"]["low"] < row["honesty"]["high"]


def test_a_lighter_week_that_was_agreed_is_lighter(log):
    log.weeks(3)
    usual = json.loads(run("next", log.folder, "--today", "2026-09-28", "--json").stdout)
    decision = {
        "id": str(UUID(int=9999)), "at": "2026-09-27T20:00:00", "week": "2026-09-21",
        "proposal": "lighter-week", "kind": "lighter week", "choice": "accept",
        "change": {"week": "2026-09-28"}, "because": "a hard month at work",
    }  # fmt: skip
    (log.folder / "decisions.jsonl").write_text(json.dumps(decision) + "\n", encoding="utf-8")
    light = json.loads(run("next", log.folder, "--today", "2026-09-28", "--json").stdout)
    assert light["session"]["place"]["kind"] == "ease"

    def sets(answer):
        return answer["session"]["exercises"][0]["prescribed"]["sets"]

    assert len(sets(light)) < len(sets(usual))
    assert sets(light)[0]["rir_real"] == sets(usual)[0]["rir_real"] + 2
    for number in range(len(sets(light))):
        log.set(21, 4 * number, "lat-pulldown", 50, 10)
    assert "Next: Dumbbell curl" in run("next", log.folder, "--today", "2026-09-28").stdout


def test_a_missed_session_moves_to_the_next_free_day(log):
    wide = INTAKE.replace("- {day: thursday", "- {day: tuesday, minutes: 60}\n- {day: thursday")
    (log.folder / "intake.yaml").write_text(wide, encoding="utf-8")
    log.weeks(1)
    text = run("next", log.folder, "--today", "2026-09-15").stdout
    assert "move Pull: monday to tuesday" in text
    assert "Pull, Tuesday 2026-09-15" in text


def test_next_week_goes_by_its_own_plan(log):
    log.weeks(1)
    changed = PLAN.replace("Lat pulldown 3 x 8-12", "Lat pulldown 2 x 8-12")
    (log.folder / "plans" / "2026-09-14.yaml").write_text(changed, encoding="utf-8")
    answer = json.loads(run("next", log.folder, "--today", "2026-09-11", "--json").stdout)
    sets = answer["session"]["exercises"][0]["prescribed"]["sets"]
    assert len(sets) == 2


def test_sets_that_cannot_be_read_are_named_with_the_reason(log):
    intake = log.folder / "intake.yaml"
    intake.write_text(INTAKE.replace("body_mass_kg: 70\n", ""), encoding="utf-8")
    log.set(0, 0, "pull-up", 0, 6)
    log.set(0, 4, "pull-up", 0, 6)
    done = run("next", log.folder, "--today", "2026-09-07")
    assert done.returncode == 0, done.stderr
    assert "2 sets of Pull-up: body mass is not known." in done.stdout
    assert "not counted" not in run("next", log.folder, "--today", "2026-09-08").stdout


def test_what_is_left_out_today_says_so_and_holds_nobody_up(log):
    plan = log.folder / "plans" / "2026-09-07.yaml"
    first = "  - Barbell bench press 3 x 6-10, RIR 2, rest 2-3 min\n  - Lat pulldown"
    plan.write_text(PLAN.replace("  - Lat pulldown", first, 1), encoding="utf-8")
    log.set(0, 0, "barbell-bench-press", 20, 0, rir=None)
    today = ("next", str(log.folder), "--today", "2026-09-14")
    why = "left out today\n   No repetition was done at the lightest load"
    assert f"1. Barbell bench press: {why}" in said(*today)
    for minute in (0, 4, 8):
        log.set(7, minute, "lat-pulldown", 50, 10)
    assert "Next: Dumbbell curl" in said(*today)
    for minute in (12, 15):
        log.set(7, minute, "dumbbell-curl", 10, 12)
    assert said(*today) == "Pull: everything is done.\n"
    named = said(*today, "--exercise", "bench press")
    assert named.startswith(f"Barbell bench press: {why}")


def test_an_exercise_the_person_skipped_is_not_asked_for(log):
    log.set(0, 0, "lat-pulldown", 50, 10)
    for one in ("lat pulldown", "dumbbell curl"):
        said("log", "add", str(log.folder), "--at", "2026-09-07 18:05", f"skip {one}")
    assert said("next", str(log.folder), "--today", "2026-09-07") == "Pull: everything is done.\n"
