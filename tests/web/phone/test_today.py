"""The page of the day and its plain forms, which work without script."""

import re
import uuid
from datetime import datetime, time, timedelta

import pytest
from django.urls import reverse
from phone_practice import as_person, log_bench, plan_text, send_week, today

from setwright.plan.decision import Decision
from setwright.plan.log import Missed, SetRecord
from setwright.plan.log_store import line_of
from setwright.web.engine.folder import folder_of
from setwright.web.models import Client, DecisionEntry, TrailEntry

SET = {"kind": "set", "exercise": "barbell-bench-press", "load": "62,5", "reps": "8", "rir": "1"}


def page(http) -> str:
    return http.get(reverse("today")).content.decode()


def log(http, **fields):
    return http.post(reverse("log-record"), {"id": str(uuid.uuid4())} | fields)


def logged(person: Client) -> list:
    return [one for one in folder_of(person).log.standing() if one.at.date() == today()]


def test_the_session_of_today_is_shown_with_loads(phone) -> None:
    shown = page(phone)
    assert "Barbell bench press" in shown and "Warm-up first" in shown
    assert "20 kg empty + 20 kg a side" in shown
    assert "60 kg × 9 (2 left), 8 (2 left)" in shown
    assert TrailEntry.objects.filter(what="saw", detail="today").exists()


def test_a_set_is_logged_without_script(phone, sent) -> None:
    answer = log(phone, **SET, number="1", place="now-0-own")
    assert answer.headers["Location"] == "/today#now-0-own"
    (one,) = logged(sent)
    assert isinstance(one, SetRecord)
    assert (one.load_kg, one.reps, one.rir, one.number) == (62.5, 8, 1, 1)
    assert "Set 2 of 3" in page(phone)


def test_a_button_pressed_twice_logs_once(phone, sent) -> None:
    ident = str(uuid.uuid4())
    for _ in range(2):
        assert log(phone, **SET, id=ident).status_code == 302
    assert len(logged(sent)) == 1


@pytest.mark.parametrize(
    ("fields", "word"),
    [
        ({"reps": ""}, "Repetitions"),
        ({"reps": "eight"}, "no figure"),
        ({"reps": "8.5"}, "whole number"),
        ({"load": "6o"}, "no figure"),
        ({"load": ""}, "figure is needed"),
        ({"pain_level": "4"}, "where"),
        ({"rir": "-3"}, "rir"),
        ({"kind": "plan"}, "not in order"),
        ({"load": "nan"}, "no figure"),
    ],
)
def test_a_form_that_is_not_in_order_says_why(phone, sent, fields, word) -> None:
    answer = log(phone, **(SET | fields))
    assert answer.status_code == 422 and word in answer.content.decode()
    assert not logged(sent)


def test_what_was_typed_is_kept(phone) -> None:
    answer = log(phone, **(SET | {"reps": "8.5"}))
    assert 'value="62,5"' in answer.content.decode()


def test_a_set_is_taken_back(phone, sent) -> None:
    log(phone, **SET)
    log(phone, kind="withdrawn", of=logged(sent)[0].id)
    assert not logged(sent) and "Set 1 of 3" in page(phone)


def test_an_exercise_is_swapped_for_the_given_stand_in(phone, sent) -> None:
    shown = page(phone)
    by = re.search(
        r'value="barbell-bench-press"><input type="hidden" name="by" value="([^"]+)"', shown
    )
    assert by, "the bench press has a stand-in"
    log(phone, kind="replaced", exercise="barbell-bench-press", by=by[1], reason="equipment")
    swapped = page(phone)
    own = swapped[swapped.index('id="now-0-own"') :].split(">")[0]
    other = swapped[swapped.index('id="now-0-other"') :].split(">")[0]
    assert own.endswith("hidden") and not other.endswith("hidden")
    log(phone, kind="set", exercise=by[1], load="20", reps="9", number="1")
    assert phone.get(reverse("next-set"), {"exercise": by[1]}).json()["first"]["number"] == 2


def test_a_session_is_left_out(phone, sent) -> None:
    log(phone, kind="missed", session="Push", reason="ill")
    assert isinstance(logged(sent)[0], Missed)
    assert "Left out today" in page(phone) and "Legs" in page(phone)


def test_a_symptom_ends_the_session_and_says_whom_to_ask(phone, sent) -> None:
    log(phone, kind="set", exercise="barbell-bench-press", symptoms=["chest pain"])
    shown = page(phone)
    assert "No session" in shown and "emergency services" in shown
    assert "Log set" not in shown
    log(phone, kind="withdrawn", of=logged(sent)[0].id)
    assert "Log set 1" in page(phone)


def test_strong_pain_ends_the_exercise_only(phone) -> None:
    log(phone, **SET, pain_level="7", pain_where="shoulder")
    answer = phone.get(reverse("next-set"), {"exercise": "barbell-bench-press"}).json()
    assert answer["first"]["over"] and "Pain 7 of 10" in answer["first"]["because"][0]
    other = phone.get(reverse("next-set"), {"exercise": "one-arm-dumbbell-row"}).json()
    assert not other["first"]["over"]


def test_a_day_of_rest_shows_what_comes_next(client, person) -> None:
    send_week(person, plan_text((today().weekday() + 1) % 7, (today().weekday() + 3) % 7))
    log_bench(person)
    as_person(client, person)
    shown = page(client)
    assert "No session today" in shown and "do it today" in shown
    log(client, **SET)
    assert "<h1>Push</h1>" in page(client)


def test_before_the_first_week_there_is_nothing(client, person) -> None:
    as_person(client, person)
    assert "has not sent a week" in page(client)
    assert client.get(reverse("day-document")).json()["document"] is None


def test_body_mass(phone, sent) -> None:
    log(phone, kind="body_mass", mass="71,4")
    assert logged(sent)[0].kg == 71.4 and "Body mass 71.4 kg" in page(phone)


def test_the_wall_clock_of_the_person_decides_the_day(phone, sent) -> None:
    for minutes in (-14 * 60, 12 * 60):
        phone.cookies["clock"] = str(minutes)
        day = phone.get(reverse("today")).headers["X-Day"]
        log(phone, **SET)
        assert folder_of(sent).log.records[-1].at.date().isoformat() == day


def test_a_page_is_small(phone) -> None:
    answer = phone.get(reverse("today"), headers={"Accept-Encoding": "gzip"})
    assert answer.headers["Content-Encoding"] == "gzip"
    assert len(answer.content) < 40_000


def test_what_could_not_be_lifted_at_all_is_left_out_and_says_why(client, person) -> None:
    send_week(person, plan_text())
    log_bench(person, load_kg=20.0, reps=(0,))
    as_person(client, person)
    shown = page(client)
    assert "Left out today" in shown and "No repetition was done at the lightest load" in shown
    assert not re.search(r"\b0 × 6", shown)
    assert "Try it all the same" in shown


def test_a_decision_of_the_coach_is_no_hindrance(phone, sent, coach) -> None:
    before = page(phone)
    decided = Decision(
        id=str(uuid.uuid4()),
        at=datetime.combine(today(), time()),
        week=today() - timedelta(today().weekday() + 7),
        proposal="one more set",
        choice="accept",
        change={"sets": 4},
    )
    DecisionEntry.objects.create(
        client=sent, decision_id=decided.id, text=line_of(decided), made_by=coach
    )
    shown = page(phone)
    assert "Warm-up first" in shown and len(shown) == pytest.approx(len(before), rel=0.01)
