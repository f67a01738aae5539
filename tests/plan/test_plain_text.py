"""Plans as coaches write them."""

import pytest

from setwright.documents.errors import DocumentError
from setwright.plan.read import read_any_plan, read_plain_text

WEEK = """\
# Spring block

**Monday - Upper (60 min)**
1) Incline DB press 3x8-10 @2 RIR, 2min
A1. Lat pulldown 3 x 10-12, RIR 1, 90 s / A2. Lateral raise 3x12-20 to failure, 60 sec
2. Bench press: 3 sets of 6 reps @ RPE 8, rest 2-3 min, 62,5 kg

Note: shoulders first if sore

Donnerstag: Beine
- Leg press 3 × 10-12, 2 RIR, Pause 120 Sek, 140 kg
* RDL - 3 x 6/7/8 (slow down), RPE 7-9, rest 3 min, tempo 31X0
• Calf raise 3x12 reps, RIR 0,5, 1:30, lengthened partials after the last set
+ One-arm dumbbell row 3 x 10 each side, RIR 2, 90"
"""


def test_a_week_in_many_ways_of_writing():
    plan = read_plain_text(WEEK, "week.txt")
    assert plan.title == "Spring block"
    upper, legs = plan.sessions
    assert (upper.name, upper.day, upper.minutes) == ("Upper", "monday", 60)
    assert (legs.name, legs.day, legs.minutes) == ("Beine", "thursday", None)
    press, pulldown, raise_, bench = upper.exercises
    assert press.exercise == "incline-dumbbell-press"
    assert (press.sets, press.reps, press.rir, press.rest_s) == (3, (8, 10), (2, 2), (120, 120))
    assert (pulldown.superset, raise_.superset) == ("A", "A")
    assert (raise_.exercise, raise_.rir, raise_.rest_s) == ("lateral-raise", (0, 0), (60, 60))
    assert (bench.exercise, bench.reps, bench.rir) == ("barbell-bench-press", (6, 6), (2, 2))
    assert (bench.rest_s, bench.load_kg) == ((120, 180), 62.5)
    leg_press, hinge, calves, row = legs.exercises
    assert (leg_press.rest_s, leg_press.load_kg) == ((120, 120), 140)
    assert (hinge.exercise, hinge.reps, hinge.rir) == ("romanian-deadlift", (6, 8), (3, 1))
    assert (hinge.note, hinge.tempo.lifting_s) == ("slow down", 0.8)
    assert (calves.rir, calves.rest_s) == ((0.5, 0.5), (90, 90))
    assert calves.partials == "after the last set"
    assert (row.exercise, row.reps, row.rest_s) == ("one-arm-dumbbell-row", (10, 10), (90, 90))


def test_numbered_days_are_spread_over_the_week_and_what_holds_for_all_is_said_once():
    days = "".join(f"Day {n}: Whole body\nBack squat 3 x 8\n" for n in (1, 2, 3))
    plan = read_any_plan("All: RIR 2, rest 2-3 min\n" + days, "week.txt")
    assert [session.day for session in plan.sessions] == ["monday", "wednesday", "friday"]
    assert {entry.rest_s for session in plan.sessions for entry in session.exercises} == {
        (120, 180)
    }


def refused(text):
    with pytest.raises(DocumentError) as caught:
        read_plain_text(text, "week.txt")
    return caught.value.faults


@pytest.mark.parametrize(
    ("line", "column", "field", "found", "allowed"),
    [
        ("Back squat 3 x 8, rest 2 min", 1, "rir", "nothing", "All: RIR 2"),
        ("Back squat 3 x 8, RIR 2", 1, "rest_s", "nothing", "All: RIR 2"),
        (
            "  - Bakc sqaut thing 3 x 8, RIR 2, 2 min",
            5,
            "exercise",
            "Bakc sqaut thing",
            "back-squat",
        ),
        ("Back squat 3 x 8, RIR 2, 2 min, heavy!", 33, "", "heavy!", "note"),
        ("Back squat 3 x 8, @8, 2 min", 19, "", "@8", "RIR 3-1"),
        ("Back squat 3 x 8, RIR 2, RIR 1, 2 min", 26, "rir", "as well", "once"),
        ("Back squat 3 x 8, RPE 12, 2 min", 19, "rpe", "RPE 12", "up to 10"),
        ("Back squat 3 x 8/8, RIR 2, 2 min", 16, "reps", "8/8", "one figure a set"),
        ("Back squat as many as you like", 1, "", "Back squat", "sets x reps"),
        ("Plank 3 x 30 s, RIR 2, 60 s", 1, "", "Plank", "sets x reps"),
        ("3 x 8, RIR 2, 2 min", 1, "exercise", "no exercise", "sets x reps"),
        ("Back squat 3 x 8 @ 75%, RIR 2, 2 min", 18, "", "75%", "80 kg"),
    ],
)
def test_a_line_that_cannot_be_read_is_listed(line, column, field, found, allowed):
    fault = refused(f"Plan: x\nMonday\n{line}\n")[0]
    assert (fault.line, fault.column, fault.field) == (3, column, field)
    assert found in fault.found
    assert allowed in fault.allowed


def test_every_unsure_name_is_listed_at_once_with_candidates():
    faults = refused(
        "All: RIR 2, rest 60 s\nMonday\nPress thing 3 x 8\nBack squat 3 x 8\nMagic row 3 x 8\n"
    )
    assert [fault.line for fault in faults] == [3, 5]
    assert all("near it" in fault.allowed for fault in faults)


@pytest.mark.parametrize(
    ("text", "allowed"),
    [
        ("", "a day"),
        ("Back squat 3 x 8, RIR 2, 2 min\n", "a day first"),
        ("Monday\nDay 2\nBack squat 3 x 8, RIR 2, 2 min\n", "weekdays for all"),
        ("Monday\n", "sets x reps"),
        ("Monday\nBack squat 30 x 8, RIR 2, 2 min\n", "20"),
        ("Monday\nBack squat 3 x 8-6, RIR 2, 2 min\n", "the lower figure first"),
        ("Monday\nA1. Back squat 3 x 6, RIR 2, 2 min\n", "two or more"),
        ("Monday\n" + "x" * 600, "characters a line"),
        ("\n" * 2000, "lines"),
    ],
)
def test_a_text_that_is_no_week_is_refused(text, allowed):
    assert any(allowed in fault.allowed for fault in refused(text))
