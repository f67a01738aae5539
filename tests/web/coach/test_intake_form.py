"""The intake as a form: what it shows, what it saves, what it says of what is wrong."""

from html import unescape
from importlib.resources import files
from typing import Any

import pytest
from django.urls import reverse
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.plan.intake import Intake
from setwright.plan.read import read_intake
from setwright.plan.write import write_intake
from setwright.web.coach.intakes import keep_text
from setwright.web.forms.intake import QUESTIONS, PersonForm
from setwright.web.forms.intake_document import read_form
from setwright.web.forms.intake_initial import initial_of
from setwright.web.forms.intake_rows import ROWS, formsets
from setwright.web.models import Account, Client, IntakeVersion, TrailEntry

EVERYTHING = """\
setwright: intake/1
name: Åse "the oar" O'Neill, jr.
experience: advanced
age_band: 60 and over
sex: female
body_mass_kg: 71.5
stature_cm: 169
screening:
  active_last_3_months: yes
  known_disease: yes
  symptoms: yes
  clearance: yes
  cleared_on: 2026-10-01
  high_blood_pressure: yes
  osteoporosis: yes
  hernia: yes
  back_pain: yes
  recent_surgery: yes
  returning_after_break: yes
setting: with a partner or staff
days:
  - {day: tuesday, minutes: 55, focus: upper}
  - {day: friday, minutes: 70}
split: upper/lower
aims: {emphasise: [side delts, chest], maintain: [calves], leave_out: [neck]}
gym: listed
kit:
  - {kit: barbell, bar_kg: 45, plates_kg: [2.5, 5, 10, 25, 45], unit: lb}
  - {kit: dumbbells, from_kg: 2, to_kg: 30, step_kg: 2, pairs: false}
  - {kit: kettlebells, loads_kg: [8, 12, 16.5]}
  - {kit: rack}
avoid:
  - {exercise: deadlift, reason: skill}
  - {pattern: vertical press, reason: pain, note: "left side: overhead, 5 of 10"}
  - {action: shoulder abduction, reason: preference}
known_loads:
  - {exercise: back-squat, load_kg: 61.23496995, reps: 8, rir: 2}
  - {exercise: pull-up, load_kg: 0, reps: 6, rir: 0.5}
earlier_this_week:
  - {day: monday, sets: {back-squat: 4, chest: 6}}
unit: lb
seed: 7
"""


def posted(intake: Intake, base: int = 0, **changes: Any) -> dict[str, Any]:
    """What a browser sends of the form that shows an intake."""
    person, rows = initial_of(intake)
    data = {**person, "base": base}
    for name, some in rows.items():
        data |= {f"{name}-TOTAL_FORMS": len(some) + 1, f"{name}-INITIAL_FORMS": len(some)}
        for at, row in enumerate(some):
            for key, value in row.items():
                if value is not False:
                    data[f"{name}-{at}-{key}"] = "on" if value is True else value
    return {**data, **changes}


def read_back(data: dict[str, Any]) -> Intake:
    person, rows = PersonForm(data), formsets({k: str(v) for k, v in data.items()}, {})
    found = read_form(person, rows)
    assert found is not None, (person.errors, {name: some.errors for name, some in rows.items()})
    return found


def scenario() -> str:
    return files("setwright.cli.scenario").joinpath("intake.yaml").read_text(encoding="utf-8")


@pytest.mark.parametrize("text", [EVERYTHING, scenario()])
def test_what_is_shown_and_sent_back_is_the_same_intake(text: str) -> None:
    intake = read_intake(text, "x")
    back = read_back(posted(intake))

    # A day's earlier work may come back as an entry a muscle.
    def flat(one: Intake) -> list[tuple[str, str, int]]:
        return [(e.day, what, n) for e in one.earlier_this_week for what, n in e.sets.items()]

    assert flat(back) == flat(intake)
    assert back.model_copy(update={"earlier_this_week": ()}) == intake.model_copy(
        update={"earlier_this_week": ()}
    )


def test_every_field_of_the_document_has_its_place_in_the_form() -> None:
    person = PersonForm()
    screening = Intake.model_fields["screening"].annotation.model_fields
    assert set(screening) == {*QUESTIONS, "cleared_on"}
    lists = {
        "aims": "aims",
        "kit": "kit",
        "avoid": "avoid",
        "known_loads": "loads",
        "earlier_this_week": "earlier",
    }
    own = set(Intake.model_fields) - {"setwright", "screening", "days", *lists}
    assert own <= set(person.fields) and set(lists.values()) == set(ROWS)
    assert {
        f"{day}_{what}" for day in ("monday", "sunday") for what in ("minutes", "focus")
    } <= set(person.fields)


def least(**changes: Any) -> dict[str, Any]:
    """The fewest answers that make an intake."""
    lists = {f"{name}-{what}_FORMS": 0 for name in ROWS for what in ("TOTAL", "INITIAL")}
    answers = dict.fromkeys(QUESTIONS, "no") | {"active_last_3_months": "yes"}
    data = {"base": 0, "name": "Pia", "experience": "beginner", "age_band": "18-39"}
    return {**lists, **answers, **data, "gym": "full gym", "monday_minutes": "60", **changes}


WORDS = st.one_of(
    st.text(max_size=30),
    st.sampled_from(["1e999", "-5", "0", "60", "2,5", "1.25 2.5", "null", "yes", "{}", "- a: b"]),
)
TYPED = [*(name for name, one in PersonForm().fields.items() if name != "base")]
ROW = [(name, field) for name, row in ROWS.items() for field in row.base_fields]


@settings(max_examples=80, deadline=None, derandomize=True)
@given(
    st.dictionaries(st.sampled_from(TYPED), WORDS, max_size=6),
    st.dictionaries(st.sampled_from(ROW), WORDS, max_size=6),
)
def test_whatever_is_typed_is_an_intake_or_a_fault_at_a_field(typed, rows) -> None:
    data = least(**typed)
    for (name, field), words in rows.items():
        data |= {f"{name}-TOTAL_FORMS": 1, f"{name}-0-{field}": words}
    data = {name: str(value) for name, value in data.items()}
    person, some = PersonForm(data), formsets(data, {})
    found = read_form(person, some)
    wrong = bool(person.errors) or any(row.errors for rows in some.values() for row in rows)
    assert (found is None) == wrong
    if found is not None:
        assert read_intake(write_intake(found), "x") == found


@pytest.fixture
def pia(practice, coach):
    return Client.objects.create(organisation=practice, coach=coach, name="Pia")


def address(client, page="intake", **words):
    return reverse(page, kwargs={"client": client.uuid, **words})


def test_a_new_intake_begins_with_sensible_answers(as_coach, pia) -> None:
    page = as_coach.get(address(pia))
    person = page.context["person"]
    assert person["name"].value() == "Pia"
    # Whether somebody was active cannot be assumed; the rest of the screening is asked aloud.
    assert person["active_last_3_months"].value() is None
    assert person["symptoms"].value() == "no" and person["gym"].value() == "full gym"
    text = page.content.decode()
    assert "never diagnose" in text and 'name="kit-1-kit"' in text


def test_a_few_answers_make_an_intake(as_coach, pia, coach) -> None:
    answer = as_coach.post(address(pia), least())
    assert answer.headers["Location"] == reverse("client", kwargs={"client": pia.uuid})
    kept = pia.intakes.get()
    assert (kept.number, kept.made_by) == (1, coach)
    assert kept.text == write_intake(read_intake(kept.text, "x"))
    assert TrailEntry.objects.filter(client=str(pia.uuid), what="changed").count() == 1


def test_everything_can_be_said(as_coach, pia) -> None:
    intake = read_intake(EVERYTHING, "x")
    as_coach.post(address(pia), posted(intake))
    kept = read_intake(pia.intakes.get().text, "x")
    assert kept.kit == intake.kit and kept.avoid == intake.avoid
    assert kept.screening == intake.screening and kept.known_loads == intake.known_loads
    pia.refresh_from_db()
    assert pia.name == intake.name
    page = as_coach.get(address(pia)).content.decode()
    assert "left side: overhead, 5 of 10" in page and 'value="2026-10-01"' in page


def test_a_clearance_that_is_needed_is_said_at_once(as_coach, pia) -> None:
    answer = as_coach.post(address(pia), least(pregnant="yes"), follow=True)
    words = "Before the first session a licensed professional should clear training: pregnancy."
    assert words in answer.content.decode()


@pytest.mark.parametrize(
    ("changes", "field", "words"),
    [
        ({"active_last_3_months": ""}, "active_last_3_months", "Yes or no?"),
        ({"name": ""}, "name", "This field is required."),
        ({"monday_minutes": "5"}, "monday_minutes", "at least 10"),
        ({"monday_minutes": ""}, "monday_minutes", "Allowed"),
        ({"monday_minutes": "an hour"}, "monday_minutes", "Found 'an hour'"),
        ({"thursday_focus": "upper"}, "thursday_minutes", "Nothing is given"),
        ({"body_mass_kg": "720"}, "body_mass_kg", "at most 300"),
        ({"seed": "1.5"}, "seed", "Found 1.5"),
        ({"cleared_on": "yesterday"}, "cleared_on", "a day as 2026-09-01"),
        ({"gym": "listed"}, "gym", "the kit there is"),
    ],
)
def test_what_is_wrong_is_said_at_its_field(as_coach, pia, changes, field, words) -> None:
    answer = as_coach.post(address(pia), least(**changes))
    assert answer.status_code == 422 and not pia.intakes.exists()
    assert words in unescape(str(answer.context["person"].errors[field]))
    assert f'href="#id_{field}' in answer.content.decode()
    for value in changes.values():
        assert not value or f'"{value}"' in answer.content.decode(), value


@pytest.mark.parametrize(
    ("rows", "row", "field", "words"),
    [
        ("aims", {"muscle": "chast", "aim": "emphasise"}, "muscle", "near it"),
        ("kit", {"bar_kg": "20"}, "kit", "Allowed"),
        ("kit", {"kit": "dumbbells", "from_kg": "2", "to_kg": "30"}, "kit", "together"),
        ("kit", {"kit": "barbell", "plates_kg": "1,25"}, "plates_kg", "Found '1,25'"),
        ("avoid", {"kind": "pattern", "what": "overhead things"}, "what", "one of"),
        ("avoid", {"kind": "exercise", "what": "a thing of mine"}, "what", "catalogue"),
        ("loads", {"exercise": "Leg press", "load": "120", "reps": ""}, "reps", "Nothing is given"),
        ("loads", {"exercise": "", "load": "120", "reps": "8"}, "exercise", "Allowed"),
        ("loads", {"exercise": "Leg press", "load": "2000", "reps": "8"}, "load", "1000"),
        ("earlier", {"day": "monday", "what": "chest", "sets": "90"}, "sets", "1 to 60 sets"),
    ],
)
def test_what_is_wrong_in_a_list_is_said_at_its_row(as_coach, pia, rows, row, field, words) -> None:
    data = {f"{rows}-TOTAL_FORMS": 3, **{f"{rows}-1-{key}": value for key, value in row.items()}}
    answer = as_coach.post(address(pia), least(**data))
    assert answer.status_code == 422 and not pia.intakes.exists()
    errors = answer.context["rows"][rows].errors
    assert words in unescape(str(errors[1][field])) and not errors[0] and not errors[2]
    for value in row.values():
        assert value in answer.content.decode()


def test_rows_come_without_a_script_and_keep_what_was_typed(as_coach, pia) -> None:
    data = least(**{"kit-TOTAL_FORMS": 1, "kit-0-kit": "rack", "name": "", "more": "kit"})
    answer = as_coach.post(address(pia), data)
    text = answer.content.decode()
    assert answer.status_code == 200 and 'name="kit-3-kit"' in text
    assert '<option value="rack" selected>' in text and not pia.intakes.exists()


def test_nothing_new_is_no_new_version(as_coach, person) -> None:
    text = person.intakes.get().text
    as_coach.post(address(person), posted(read_intake(text, "x"), base=1))
    assert person.intakes.count() == 1


def test_a_change_keeps_the_authors_hand(as_coach, person) -> None:
    first = person.intakes.get()
    first.text = "# Oda of the hall\n" + first.text
    first.save()
    data = posted(read_intake(first.text, "x"), base=1, experience="advanced")
    as_coach.post(address(person), data)
    second = person.intakes.get(number=2)
    assert second.text == first.text.replace("intermediate", "advanced")


def test_two_who_edit_do_not_overwrite_each_other(as_coach, person, owner) -> None:
    text = person.intakes.get().text
    theirs = text.replace("intermediate", "advanced")
    IntakeVersion.objects.create(client=person, number=2, text=theirs, made_by=owner)
    mine = posted(read_intake(text, "x"), base=1, saturday_minutes="45")
    answer = as_coach.post(address(person), mine)
    assert answer.status_code == 409 and person.intakes.count() == 2
    shown = answer.content.decode()
    assert "Version 2 was saved meanwhile by Runa" in shown
    assert "advanced" in shown and 'name="saturday_minutes" value="45"' in shown
    assert {one.field for one in answer.context["meanwhile"]["differences"]} == {
        "experience",
        "days",
    }
    # Sent again, it stands on their version.
    mine["base"] = answer.context["person"]["base"].value()
    assert as_coach.post(address(person), mine).status_code == 302
    assert read_intake(person.intakes.get(number=3).text, "x").days[-1].day == "saturday"


def test_the_document_is_pasted_or_uploaded(as_coach, person, tmp_path) -> None:
    url = address(person, "intake-document")
    shown = as_coach.get(url).content.decode()
    assert "age_band: 18-39" in shown
    text = person.intakes.get().text + "\n# measured in May\n"
    assert as_coach.post(url, {"text": text.replace("\n", "\r\n"), "base": 1}).status_code == 302
    assert person.intakes.get(number=2).text == text
    file = tmp_path / "intake.yaml"
    file.write_text(text.replace("Oda", "Odalys"), "utf-8-sig")
    with file.open("rb") as opened:
        assert as_coach.post(url, {"file": opened, "base": 2}).status_code == 302
    person.refresh_from_db()
    assert person.name == "Odalys"
    late = as_coach.post(url, {"text": text, "base": 1})
    assert late.status_code == 409 and "Version 3 was saved meanwhile" in late.content.decode()
    assert "Odalys" in late.content.decode() and person.intakes.count() == 3


@pytest.mark.parametrize(
    ("data", "words"),
    [
        ({"text": "setwright: intake/1\nname: [\n"}, "Line "),
        ({"text": "setwright: plan/1"}, "intake/1"),
        ({"text": ""}, "Choose a file, or paste the document."),
        ({"text": "a: &b [*b]"}, "found"),
        ({"text": "x" * 200_001}, "200000"),
    ],
)
def test_a_document_at_fault_is_said_by_line(as_coach, person, data, words) -> None:
    answer = as_coach.post(address(person, "intake-document"), {**data, "base": 1})
    assert answer.status_code == 422 and words in answer.content.decode()
    assert person.intakes.count() == 1


def test_a_file_that_is_no_text_is_refused(as_coach, person, tmp_path) -> None:
    file = tmp_path / "x.yaml"
    for content, words in ((b"\xff\xfe\x00", "no UTF-8 text"), (b"x" * 200_001, "A file of up to")):
        file.write_bytes(content)
        with file.open("rb") as opened:
            answer = as_coach.post(address(person, "intake-document"), {"file": opened, "base": 1})
        assert answer.status_code == 422 and words in answer.content.decode()


def test_an_earlier_version_counts_again(as_coach, person) -> None:
    text = person.intakes.get().text
    IntakeVersion.objects.create(
        client=person, number=2, text=text.replace("intermediate", "advanced")
    )
    page = as_coach.get(address(person, "intake-version", number=2))
    assert [(one.field, one.theirs, one.ours) for one in page.context["changes"]] == [
        ("experience", "intermediate", "advanced")
    ]
    assert as_coach.get(address(person, "intake-version", number=3)).status_code == 404
    as_coach.post(address(person, "intake-put-back", number=1))
    assert person.intakes.get(number=3).text == text


ANSWERS = """\
Name,Age,Experience,Which days can you train?,How long is a session?,High blood pressure?,Lately
Pia,34,3 years,Mon and Thu,60 min,sort of,rowing
"""


def test_answers_of_a_form_go_into_the_form_unsaved(as_coach, pia, tmp_path) -> None:
    file = tmp_path / "answers.csv"
    file.write_text(ANSWERS, "utf-8")
    url = address(pia, "intake-import")
    with file.open("rb") as opened:
        read = as_coach.post(url, {"file": opened})
    text = read.content.decode()
    assert read.status_code == 200 and "neither yes nor no" in text
    held = {"held": read.context["held"], "held_name": read.context["held_name"]}
    cleared = as_coach.post(url, {**held, "answer:F2": "no"})
    assert "neither yes nor no" not in cleared.content.decode()
    shown = as_coach.post(url, {**held, "answer:F2": "no", "use": "yes"})
    person = shown.context["person"]
    assert person["experience"].value() == "intermediate"
    assert person["thursday_minutes"].value() == 60
    assert person["high_blood_pressure"].value() == "no"
    assert not pia.intakes.exists()


def test_of_several_people_one_is_chosen(as_coach, pia, tmp_path) -> None:
    file = tmp_path / "answers.csv"
    file.write_text(ANSWERS + "Ulf,50,none,Tue,45 min,no,\n", "utf-8")
    url = address(pia, "intake-import")
    with file.open("rb") as opened:
        asked = as_coach.post(url, {"file": opened})
    assert asked.status_code == 422 and "Whose answers?" in asked.content.decode()
    assert "'Pia', 'Ulf'" in asked.content.decode().replace("&#x27;", "'")
    held = {"held": asked.context["held"], "held_name": asked.context["held_name"]}
    chosen = as_coach.post(url, {**held, "answer:person": "pia"})
    assert chosen.status_code == 200 and chosen.context["reading"].intake.name == "Pia"


@pytest.mark.parametrize(
    "held", ["%%%", "QUJD", "", "AAAA" * 200_000], ids=["no base64", "no form", "empty", "large"]
)
def test_what_travels_with_the_page_is_not_trusted(as_coach, pia, held) -> None:
    answer = as_coach.post(address(pia, "intake-import"), {"held": held, "held_name": "a.csv"})
    assert answer.status_code == 422


def test_another_name_is_the_phones_name_as_well(person, coach):
    person.account = Account.objects.create(
        organisation=person.organisation, role="client", name=person.name
    )
    person.save()
    text = person.intakes.latest("number").text
    keep_text(person, person.intakes.latest("number").number, coach, text.replace("Oda", "Ada"))
    person.refresh_from_db()
    assert person.name == person.account.name == "Ada"
