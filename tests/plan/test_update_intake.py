"""An intake changed in its author's own text, and the day of a clearance in a file."""

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.documents.errors import DocumentError
from setwright.plan.intake import Aims, Intake, Stock, TrainingDay
from setwright.plan.read import read_intake
from setwright.plan.update_intake import update_intake
from setwright.plan.write import write_intake

TEXT = """\
# Oda trains in the boathouse.
setwright: intake/1
name: Oda
experience: intermediate # three years
age_band: 18-39
screening:
  active_last_3_months: yes # says her diary
  symptoms: no
days:
  - {day: monday, minutes: 60}
  # Her late shift.
  - {day: thursday, minutes: 45}
aims:
  emphasise: [chest]
gym: listed
kit: # measured
  - {kit: barbell, bar_kg: 20, plates_kg: [1.25, 2.5, 5, 10, 20]}
  - {kit: rack}
  - {kit: bench}
known_loads:
  - Barbell bench press: 60 kg x 8 @ 2 RIR
"""
OLD = read_intake(TEXT, "intake.yaml")


def test_what_does_not_change_stays_as_it_was_written() -> None:
    assert update_intake(TEXT, OLD) == TEXT
    new = OLD.model_copy(update={"experience": "advanced"})
    text = update_intake(TEXT, new)
    assert " ".join(text.split()) == " ".join(TEXT.replace("intermediate #", "advanced #").split())


def test_members_that_stay_keep_their_hand_and_comments() -> None:
    days = (OLD.days[1], TrainingDay(day="saturday", minutes=60))
    kit = (*OLD.kit[:2], Stock(kit="dumbbells", from_kg=2, to_kg=30, step_kg=2))
    new = OLD.model_copy(update={"days": days, "kit": kit, "aims": Aims(maintain=("calves",))})
    text = update_intake(TEXT, new)
    assert read_intake(text, "x") == new
    for kept in ("# Oda trains", "# Her late shift.", "kit: # measured", "maintain: [calves]",
                 "- Barbell bench press: 60 kg x 8 @ 2 RIR",
                 "- {kit: dumbbells, from_kg: 2, to_kg: 30, step_kg: 2}"):  # fmt: skip
        assert kept in text
    assert "monday" not in text and "{kit: bench}" not in text


def test_the_day_of_a_clearance_is_read_and_written() -> None:
    text = TEXT.replace("  symptoms: no", "  symptoms: yes\n  cleared_on: 2026-09-01")
    intake = read_intake(text, "x")
    assert intake.screening.cleared_on == date(2026, 9, 1)
    assert read_intake(write_intake(intake), "x") == intake
    assert read_intake(update_intake(TEXT, intake), "x") == intake


@pytest.mark.parametrize("said", ["soon", "2026-13-01", "yes", "3"])
def test_a_clearance_without_a_day_is_said_with_its_place(said: str) -> None:
    text = TEXT.replace("  symptoms: no", f"  cleared_on: {said}")
    with pytest.raises(DocumentError) as error:
        read_intake(text, "intake.yaml")
    (fault,) = error.value.faults
    assert (fault.field, fault.line) == ("screening.cleared_on", 8)


_NOTES = st.text(st.characters(exclude_categories=["Cs", "Cc"]), max_size=30)


@settings(max_examples=60, deadline=None, derandomize=True)
@given(
    st.lists(st.sampled_from(["rack", "bench", "step", "pull-up bar"]), min_size=1, max_size=5),
    st.lists(st.sampled_from(["monday", "thursday", "sunday"]), min_size=1, unique=True),
    _NOTES.filter(lambda text: text.strip() == text and text != ""),
)
def test_whatever_changes_is_what_is_written(kit: list[str], days: list[str], name: str) -> None:
    data = OLD.model_dump()
    data["kit"] = tuple({"kit": one} for one in kit)
    data["days"] = tuple({"day": day, "minutes": 45} for day in days)
    data["name"] = name
    new = Intake.model_validate(data)
    assert read_intake(update_intake(TEXT, new), "x") == new
