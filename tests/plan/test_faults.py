"""Every fault names its line, column, field, what was found and what is allowed."""

import re

import pytest

from setwright.documents.errors import DocumentError
from setwright.plan.read import read_intake, read_plan

PLAN = """\
setwright: plan/1
title: A week
unit: kg
sessions:
  - name: Lower
    day: monday
    minutes: 60
    exercises:
      - Back squat: 3 x 6-8, RIR 3-1, rest 2-3 min, 80 kg
      - exercise: leg press
        sets: 3
        reps: 8-10
        rir: 2
        rest: 2 min
      - Leg extension: 3 x 10-12, RIR 1, rest 90 s, superset A
      - Seated leg curl: 3 x 10-12, RIR 1, rest 90 s, superset A
"""
INTAKE = """\
setwright: intake/1
name: Marit
experience: beginner
age_band: 40-59
screening: {active_last_3_months: yes}
days:
  - monday 60 min
  - {day: thursday, minutes: 45}
aims:
  emphasise: [glutes]
  leave_out: [neck]
gym: full gym
avoid:
  - {exercise: deadlift, reason: skill}
known_loads:
  - Leg press: 90 kg x 10 @ 2 RIR
"""


def faults(read, text, old, new):
    assert text.count(old) >= 1, "the change must change something"
    read(text, "file.yaml")
    with pytest.raises(DocumentError) as caught:
        read(text.replace(old, new, 1), "file.yaml")
    return caught.value.faults


@pytest.mark.parametrize(
    ("old", "new", "line", "column", "field", "allowed"),
    [
        ("plan/1", "plan/2", 1, 12, "setwright", "plan/1"),
        ("plan/1", "1", 1, 12, "setwright", "plan/1"),
        ("title: A week\n", "", 1, 1, "title", "must be given"),
        ("title: A week", "titel: A week\ntitle: x", 2, 1, "titel", "no such field"),
        ("title: A week", "title: 12", 2, 8, "title", "text"),
        ("unit: kg", "unit: stone", 3, 7, "unit", "'kg' or 'lb'"),
        ("day: monday", "day: someday", 6, 10, "sessions.0.day", "'monday'"),
        ("minutes: 60", "minutes: true", 7, 14, "sessions.0.minutes", "a whole number"),
        ("minutes: 60", "minutes: 2", 7, 14, "sessions.0.minutes", "at least 5"),
        ("minutes: 60", "minutes: .inf", 7, 14, "sessions.0.minutes", "a whole number"),
        ("Back squat", "Bakc sqat", 9, 9, "sessions.0.exercises.0.Bakc sqat", "back-squat"),
        ("3 x 6-8", "3 by 6-8", 9, 21, "sessions.0.exercises.0.Back squat", "sets x repetitions"),
        ("3 x 6-8", "3 x 8-6", 9, 25, "sessions.0.exercises.0.reps", "the lower figure first"),
        ("3 x 6-8", "30 x 6-8", 9, 21, "sessions.0.exercises.0.sets", "at most 20"),
        ("3 x 6-8", "0 x 6-8", 9, 21, "sessions.0.exercises.0.sets", "at least 1"),
        ("3 x 6-8", "3 x 6-800", 9, 25, "sessions.0.exercises.0.reps", "at most 100"),
        ("RIR 3-1, ", "", 9, 9, "sessions.0.exercises.0.rir", "must be given"),
        ("2-3 min", "3-2 min", 9, 39, "sessions.0.exercises.0.rest_s", "the lower figure first"),
        ("2-3 min", "2-3 h", 9, 48, "sessions.0.exercises.0.Back squat", "note"),
        ("80 kg", "80 stone", 9, 53, "sessions.0.exercises.0.Back squat", "80 kg"),
        ("80 kg", "80 kg, 90 kg", 9, 60, "sessions.0.exercises.0.Back squat", "once"),
        ("80 kg", "8000 kg", 9, 53, "sessions.0.exercises.0.load_kg", "at most 1000"),
        (
            "leg press",
            "leg prss machine thing",
            10,
            19,
            "sessions.0.exercises.1.exercise",
            "leg-press",
        ),
        ("reps: 8-10", "reps: eight", 12, 15, "sessions.0.exercises.1.reps", "8-10"),
        ("reps: 8-10", "reps: 8.5", 12, 15, "sessions.0.exercises.1.reps", "a whole number"),
        ("reps: 8-10", "reps: [8, true]", 12, 15, "sessions.0.exercises.1.reps", "8-10"),
        ("rir: 2", "rir: 11", 13, 14, "sessions.0.exercises.1.rir", "at most 10"),
        ("rir: 2", "rir: yes", 13, 14, "sessions.0.exercises.1.rir", "3-1"),
        ("rest: 2 min", "rest: 2.01 min", 14, 15, "sessions.0.exercises.1.rest", "whole seconds"),
        ("rest: 2 min", "rest: 90 min", 14, 15, "sessions.0.exercises.1.rest", "at most 900"),
        (
            "rest: 2 min",
            "rest: 60\n        rest_s: 60",
            14,
            15,
            "sessions.0.exercises.1.rest",
            "one of",
        ),
        (
            "rest: 2 min",
            "rest: 60\n        tempo: 9",
            15,
            16,
            "sessions.0.exercises.1.tempo",
            "3/1/1/0",
        ),
        (
            "rest: 2 min",
            "rest: 60\n        tempo: 0/0/0/0",
            15,
            16,
            "sessions.0.exercises.1.tempo",
            "0 s",
        ),
        (
            "90 s, superset A",
            "90 s, superset B",
            15,
            53,
            "sessions.0.exercises.2.superset",
            "two or more",
        ),
    ],
)
def test_plan(old, new, line, column, field, allowed):
    found = [fault for fault in faults(read_plan, PLAN, old, new) if fault.field.startswith(field)]
    fault = next(fault for fault in found if allowed in fault.allowed)
    assert (fault.line, fault.column) == (line, column)
    assert fault.found


def test_a_superset_with_another_exercise_between_is_refused():
    between = "superset A\n      - Leg press: 2 x 8, RIR 2, rest 60 s\n"
    found = faults(read_plan, PLAN, "superset A\n", between)
    assert "one after the other" in found[0].allowed
    assert found[0].line == 17


@pytest.mark.parametrize(
    ("old", "new", "line", "column", "field", "allowed"),
    [
        ("experience: beginner", "experience: novice", 3, 13, "experience", "'beginner'"),
        (
            "active_last_3_months: yes",
            "active_last_3_months: maybe",
            5,
            35,
            "screening",
            "true or false",
        ),
        ("active_last_3_months: yes", "", 5, 12, "screening", "must be given"),
        ("monday 60 min", "monday", 7, 5, "days.0", "monday 60 min"),
        ("monday 60 min", "monday 6 min", 7, 12, "days.0", "at least 10"),
        ("day: thursday", "day: monday", 8, 11, "days.1.day", "each day once"),
        ("[glutes]", "[glutes, glutes]", 10, 23, "aims.emphasise.1", "one aim"),
        ("[glutes]", "[glootes]", 10, 15, "aims.emphasise.0", "glutes"),
        ("[neck]", "[glutes]", 11, 15, "aims.leave_out.0", "one aim"),
        ("gym: full gym", "gym: listed", 1, 1, "kit", "gym: bodyweight"),
        (
            "{exercise: deadlift,",
            "{exercise: deadlift, pattern: hinge,",
            14,
            5,
            "avoid.0",
            "exactly one",
        ),
        ("exercise: deadlift,", "", 14, 5, "avoid.0", "exactly one"),
        ("exercise: deadlift,", "pattern: hinges,", 14, 15, "avoid.0", "hinge"),
        (
            "exercise: deadlift,",
            "action: shoulder abducting,",
            14,
            14,
            "avoid.0",
            "shoulder abduction",
        ),
        ("reason: skill", "reason: dislike", 14, 34, "avoid.0.reason", "'pain'"),
        ("90 kg x 10", "90 x 10", 16, 5, "known_loads.0", "80 kg x 8"),
        ("Leg press:", "Leg prss thing:", 16, 5, "known_loads.0", "leg-press"),
        ("known_loads:", "body_mass_kg: .nan\nknown_loads:", 15, 15, "body_mass_kg", "a number"),
        (
            "known_loads:",
            "kit: [{kit: cable, from_kg: 5}]\nknown_loads:",
            15,
            7,
            "kit.0",
            "together",
        ),
        (
            "known_loads:",
            "kit: [{kit: cable, from_kg: 9, to_kg: 5, step_kg: 1}]\nknown_loads:",
            15,
            39,
            "kit.0",
            "the smaller load first",
        ),
        (
            "known_loads:",
            "earlier_this_week: [{day: sun, sets: {glutes: 0}}]\nknown_loads:",
            15,
            47,
            "earlier",
            "1 to 60",
        ),
    ],
)
def test_intake(old, new, line, column, field, allowed):
    found = faults(read_intake, INTAKE, old, new)
    fault = next(fault for fault in found if allowed in fault.allowed)
    assert fault.field.startswith(field)
    assert (fault.line, fault.column) == (line, column)


def test_a_narrower_aim_may_be_set_apart_from_a_wider_one_but_not_the_other_way_round():
    text = INTAKE.replace("[glutes]", "[quadriceps]").replace("[neck]", "[rectus femoris]")
    assert read_intake(text, "file.yaml").aims.leave_out == ("rectus femoris",)
    turned = INTAKE.replace("[glutes]", "[rectus femoris]").replace("[neck]", "[quadriceps]")
    with pytest.raises(DocumentError, match="one aim for a muscle"):
        read_intake(turned, "file.yaml")


def test_all_faults_come_at_once_each_on_a_line_of_its_own():
    text = PLAN.replace("minutes: 60", "minutes: 1").replace("sets: 3", "sets: 99")
    with pytest.raises(DocumentError) as caught:
        read_plan(text, "week.yaml")
    lines = str(caught.value).splitlines()
    assert len(lines) == 2
    assert re.fullmatch(
        r"week\.yaml:7:14: sessions\.0\.minutes: found 1; allowed: at least 5", lines[0]
    )


@pytest.mark.parametrize("text", ["- a\n- b\n", "just words", "12", "setwright: [plan/1]", "null"])
def test_no_mapping_is_no_plan(text):
    with pytest.raises(DocumentError, match="plan/1"):
        read_plan(text, "file.yaml")
