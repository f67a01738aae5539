"""A plan file brought up to date keeps its author's comments, order and manner of writing."""

import re

import pytest

from setwright.documents.errors import DocumentError
from setwright.plan.read import read_plan
from setwright.plan.shorthand import parse_line
from setwright.plan.write import update_plan

TEXT = """\
# The coach's own heading.
unit: kg   # order differs from ours
setwright: plan/1
title: "A week"

sessions:
- day: Mon   # short form
  name: Lower
  exercises:
  # the first lift
  - squat: 3 x 6-8, RIR 3-1, rest 2-3 min, 80 kg   # heavy
  - exercise: leg press   # by fields
    rest: 2 min
    sets: 3
    reps: 8-10   # the band
    rir: 2
  - "Leg extension: 3 x 10-12, RIR 1, rest 90 s"   # a line in quotes
"""


def changed(plan, at=0, **entry):
    session = plan.sessions[0]
    entries = list(session.exercises)
    entries[at] = entries[at].model_copy(update=entry)
    return plan.model_copy(
        update={"sessions": (session.model_copy(update={"exercises": tuple(entries)}),)}
    )


def test_the_same_plan_leaves_the_text_untouched():
    assert update_plan(TEXT, read_plan(TEXT, "plan.yaml")) == TEXT


@pytest.mark.parametrize(
    ("at", "entry", "old", "new"),
    [
        (0, {"sets": 4}, "3 x 6-8", "4 x 6-8"),
        (0, {"load_kg": 82.5}, "80 kg", "82.5 kg"),
        (1, {"reps": (10, 12)}, "reps: 8-10", "reps: 10-12"),
        (1, {"rest_s": (120, 180)}, "rest: 2 min", "rest: 2-3 min"),
        (2, {"rir": (1.0, 0.0)}, "RIR 1, rest 90", "RIR 1-0, rest 90"),
    ],
)
def test_one_change_changes_one_place(at, entry, old, new):
    plan = changed(read_plan(TEXT, "plan.yaml"), at, **entry)
    # Comments behind a value keep their column, so their distance to the value may change.
    text = re.sub(r" +#", " #", update_plan(TEXT, plan))
    assert text == re.sub(r" +#", " #", TEXT.replace(old, new))


def test_a_new_title_keeps_the_rest():
    plan = read_plan(TEXT, "plan.yaml").model_copy(update={"title": "Another"})
    assert update_plan(TEXT, plan) == TEXT.replace("A week", "Another")


def test_an_exercise_more_and_one_less_keep_the_comments_of_the_others():
    plan = read_plan(TEXT, "plan.yaml")
    session = plan.sessions[0]
    added = parse_line("Seated leg curl: 3 x 10-12, RIR 1, rest 90 s")
    after = plan.model_copy(
        update={
            "sessions": (session.model_copy(update={"exercises": (*session.exercises[:2], added)}),)
        }
    )
    text = update_plan(TEXT, after)
    assert read_plan(text, "plan.yaml") == after
    for comment in (
        "The coach's own heading",
        "order differs",
        "short form",
        "first lift",
        "heavy",
    ):
        assert comment in text
    for comment in ("by fields", "the band"):
        assert comment in text
    assert "- Seated leg curl: 3 x 10-12, RIR 1, rest 90 s" in text
    assert "Leg extension" not in text


def test_a_comment_above_an_exercise_stays_when_the_one_before_it_goes():
    text = TEXT.replace(
        "  - exercise: leg press", "  # machines from here\n  - exercise: leg press"
    )
    plan = read_plan(text, "plan.yaml")
    session = plan.sessions[0]
    after = plan.model_copy(
        update={"sessions": (session.model_copy(update={"exercises": session.exercises[1:]}),)}
    )
    updated = update_plan(text, after)
    assert "  # machines from here\n  - exercise: leg press" in updated
    assert "heavy" not in updated
    assert read_plan(updated, "plan.yaml") == after


def test_a_day_goes_and_a_day_comes():
    plan = read_plan(TEXT, "plan.yaml")
    other = plan.sessions[0].model_copy(update={"name": "Upper", "day": "thursday"})
    both = plan.model_copy(update={"sessions": (*plan.sessions, other)})
    text = update_plan(TEXT, both)
    assert read_plan(text, "plan.yaml") == both
    assert text.startswith(TEXT.rstrip("\n")[:200])
    back = update_plan(text, plan)
    assert read_plan(back, "plan.yaml") == plan
    assert "# heavy" in back


def test_a_text_that_is_no_plan_is_refused():
    with pytest.raises(DocumentError):
        update_plan("title: x\n", read_plan(TEXT, "plan.yaml"))


def test_comments_survive_where_the_file_has_to_be_written_anew():
    plan = read_plan(TEXT, "plan.yaml").model_copy(update={"title": "\u2028bad\x85\ufeff"})
    text = update_plan(TEXT, plan)
    assert read_plan(text, "plan.yaml") == plan
    assert "# The coach's own heading." in text
    assert "# the first lift" in text
