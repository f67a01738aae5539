"""Records arrive exactly once, from whoever is signed in, and nothing is dropped."""

import json

import pytest
from django.test import Client as Browser
from django.urls import reverse
from phone_practice import a_set, as_person

from setwright.training.facts.twice import written_twice
from setwright.web.engine.folder import folder_of
from setwright.web.models import LogEntry, TrailEntry


def send(http, person, records):
    body = {"person": str(person.account.uuid), "records": records}
    return http.post(reverse("sync"), body, content_type="application/json")


def test_a_batch_sent_twice_is_kept_once(phone, sent) -> None:
    before = LogEntry.objects.count()
    batch = [a_set(1), a_set(2)]
    first, again = send(phone, sent, batch).json(), send(phone, sent, batch).json()
    ids = [one["id"] for one in batch]
    assert first == {"accepted": ids, "known": [], "refused": []}
    assert again == {"accepted": [], "known": ids, "refused": []}
    assert LogEntry.objects.count() == before + 2
    assert TrailEntry.objects.filter(what="logged", detail="2 records").count() == 1


def test_a_refused_record_holds_up_no_other(phone, sent) -> None:
    good, bad = a_set(1), a_set(2, reps="many")
    answer = send(phone, sent, [bad, good]).json()
    assert answer["accepted"] == [good["id"]]
    assert answer["refused"][0]["id"] == bad["id"]
    assert "reps" in " ".join(answer["refused"][0]["why"])


def test_an_id_cannot_be_used_for_another_record(phone, sent) -> None:
    one = a_set(1)
    send(phone, sent, [one])
    answer = send(phone, sent, [one | {"reps": 12}]).json()
    assert answer["refused"][0]["id"] == one["id"]
    assert '"reps":8' in LogEntry.objects.get(record_id=one["id"]).text


def test_the_same_number_from_two_phones_stays_twice(sent) -> None:
    records = []
    for reps in (8, 7):
        phone = Browser()
        as_person(phone, sent)
        records.append(a_set(1, reps=reps))
        assert send(phone, sent, [records[-1]]).json()["accepted"]
    held = folder_of(sent).log.standing()
    assert {one["id"] for one in records} <= {one.id for one in held}
    assert {one.id for one in written_twice(held)} == {one["id"] for one in records}
    phone = Browser()
    as_person(phone, sent)
    assert phone.get(reverse("today")).content.decode().count("from two devices") == 2


@pytest.mark.parametrize(
    "body", ["", "nothing", "[]", "{}", '{"records": 3, "person": "x"}', '{"person": "x"}']
)
def test_what_is_no_batch_is_refused(phone, body) -> None:
    assert phone.post(reverse("sync"), body, content_type="application/json").status_code == 400


def test_too_many_at_once_are_refused(phone, sent) -> None:
    assert send(phone, sent, [a_set(1)] * 501).status_code == 400


def test_records_that_are_none_are_refused_one_by_one(phone, sent) -> None:
    answer = send(phone, sent, [None, 7, [], {"id": "x"}, {"kind": "plan"}])
    assert answer.status_code == 200 and len(answer.json()["refused"]) == 5


def test_the_queue_of_another_person_is_not_taken(phone, sent) -> None:
    before = LogEntry.objects.count()
    body = {"person": "6a0e4f43-0f29-4a0e-8f7c-0d2a0f9f5a11", "records": [a_set(1)]}
    answer = phone.post(reverse("sync"), body, content_type="application/json")
    assert answer.status_code == 409 and LogEntry.objects.count() == before


def test_signed_out_records_wait(sent) -> None:
    answer = send(Browser(), sent, [a_set(1)])
    assert answer.status_code == 302 and answer.headers["Location"].startswith("/sign-in")


@pytest.mark.parametrize("name", ["today", "day-document", "next-set"])
def test_a_coach_has_no_phone_page(as_coach, sent, name) -> None:
    assert as_coach.get(reverse(name)).status_code == 404
    assert send(as_coach, sent, [a_set(1)]).status_code == 404


def test_a_token_is_needed_and_given(sent) -> None:
    phone = Browser(enforce_csrf_checks=True)
    as_person(phone, sent)
    body = json.dumps({"person": str(sent.account.uuid), "records": [a_set(1)]})
    assert phone.post(reverse("sync"), body, content_type="application/json").status_code == 403
    token = phone.get(reverse("day-document")).json()["csrf"]
    answer = phone.post(
        reverse("sync"), body, content_type="application/json", headers={"X-CSRFToken": token}
    )
    assert answer.status_code == 200
