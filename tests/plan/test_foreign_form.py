"""A client's intake from a form: answers mapped by their questions, doubtful ones listed."""

import csv
import io

import pytest

from setwright.documents.errors import DocumentError
from setwright.plan.foreign.form import read_form
from setwright.plan.read import read_intake
from setwright.plan.write import write_intake

ANSWERS = {
    "Timestamp": "2026-03-01 10:00",
    "Your name": "Marit",
    "How old are you?": "34",
    "Gender": "Female",
    "Height": "5'8\"",
    "Current weight (lb)": "150",
    "Training experience": "3 years",
    "Which days can you train?": "Mon, Wed & Fri",
    "How long can a session be?": "45-60 min",
    "Where do you train?": "Commercial gym",
    "In the last 3 months, have you exercised regularly?": "Yes",
    "Any heart or kidney disease?": "No",
    "Chest pain, dizziness or other symptoms?": "No",
    "Has a doctor cleared you to train?": "No",
    "High blood pressure?": "yes, treated",
    "Are you pregnant?": "no",
    "Osteoporosis?": "no",
    "A hernia?": "no",
    "Back pain?": "no",
    "Surgery in the last year?": "no",
    "Are you returning after a break?": "no",
    "Exercises that hurt (injuries)": "upright row",
    "Exercises you dislike": "burpees of doom",
    "Muscles you want to focus on": "glutes, side delts",
    "Back squat (best recent set)": "80 kg x 5",
}


def form(rows, delimiter=",") -> bytes:
    into = io.StringIO()
    csv.writer(into, delimiter=delimiter).writerows(rows)
    return into.getvalue().encode()


def across(answers) -> bytes:
    return form([list(answers), list(answers.values())])


@pytest.fixture
def reading():
    return read_form(across(ANSWERS), "form.csv", None, {})


def test_answers_reach_their_fields(reading) -> None:
    intake = reading.intake
    assert (intake.name, intake.age_band, intake.sex) == ("Marit", "18-39", "female")
    assert intake.stature_cm == pytest.approx(172.7)
    assert intake.body_mass_kg == pytest.approx(68.0)
    assert intake.experience == "intermediate"
    assert [(day.day, day.minutes) for day in intake.days] == [
        ("monday", 45), ("wednesday", 45), ("friday", 45),
    ]  # fmt: skip
    assert intake.gym == "full gym"
    assert intake.screening.active_last_3_months and intake.screening.high_blood_pressure
    assert not intake.screening.symptoms
    assert [(one.exercise, one.reason) for one in intake.avoid] == [("upright-row", "pain")]
    assert intake.aims.emphasise == ("glutes", "side delts")
    (done,) = intake.known_loads
    assert (done.exercise, done.load_kg, done.reps) == ("back-squat", 80, 5)


def test_the_intake_can_be_written_and_read(reading) -> None:
    assert read_intake(write_intake(reading.intake), "intake.yaml") == reading.intake


def test_every_question_and_answer_is_accounted_for(reading) -> None:
    places = [piece.place for piece in reading.pieces if piece.text]
    assert len(places) == len(set(places)) == 2 * len(ANSWERS)
    doubtful = {piece.text for piece in reading.attention}
    assert doubtful == {"burpees of doom"}


@pytest.mark.parametrize(
    ("question", "field"),
    [
        ("Chest pain, dizziness or other symptoms?", "symptoms"),
        ("Any heart or kidney disease?", "known_disease"),
        ("Back pain?", "back_pain"),
    ],
)
@pytest.mark.parametrize("answer", ["not really, sometimes", "maybe", "no, well, a little"])
def test_a_doubtful_screening_answer_is_taken_on_the_careful_side(question, field, answer) -> None:
    reading = read_form(across(ANSWERS | {question: answer}), "form.csv", None, {})
    assert getattr(reading.intake.screening, field)
    assert answer in {piece.text for piece in reading.attention}


def test_clearance_needs_a_plain_yes() -> None:
    asked = "Has a doctor cleared you to train?"
    reading = read_form(across(ANSWERS | {asked: "I think so"}), "form.csv", None, {})
    assert not reading.intake.screening.clearance
    assert "I think so" in {piece.text for piece in reading.attention}


def test_what_the_form_does_not_ask_about_is_said() -> None:
    short = {k: v for k, v in ANSWERS.items() if "pregnant" not in k and "hernia" not in k}
    reading = read_form(across(short), "form.csv", None, {})
    (said,) = [piece.why for piece in reading.attention if piece.place == "screening"]
    assert "pregnant" in said and "hernia" in said


def test_questions_beside_answers_read_the_same(reading) -> None:
    down = read_form(form(list(ANSWERS.items()), ";"), "form.csv", None, {})
    assert down.intake == reading.intake


def test_without_days_there_is_no_intake_until_it_is_answered() -> None:
    short = {k: v for k, v in ANSWERS.items() if "days" not in k}
    reading = read_form(across(short), "form.csv", None, {})
    assert reading.intake is None
    assert "days" in {piece.place for piece in reading.attention}
    said = read_form(across(short), "form.csv", None, {"days": "Tuesday, Saturday"})
    assert [day.day for day in said.intake.days] == ["tuesday", "saturday"]


def test_one_of_several_people_is_chosen() -> None:
    others = [list(ANSWERS), list(ANSWERS.values()), list((ANSWERS | {"Your name": "Bo"}).values())]
    with pytest.raises(DocumentError, match="'Marit', 'Bo'"):
        read_form(form(others), "form.csv", None, {})
    assert read_form(form(others), "form.csv", None, {"person": "Bo"}).intake.name == "Bo"


def test_a_table_that_is_no_form_is_refused() -> None:
    with pytest.raises(DocumentError, match="a form"):
        read_form(b"a,b\n1,2\n", "form.csv", None, {})
