"""What programs can do: the same as the coach, no more, and nothing lost."""

from uuid import UUID, uuid4

import pytest
from django.utils import timezone

from setwright.plan.read import read_plan
from setwright.web.api.tokens import account_of, make_token, revoke
from setwright.web.models import ApiToken, PlanVersion, TrailEntry, Week

from .conftest import Program

PLAN = """\
setwright: plan/1
title: One day
sessions:
  - name: Whole
    day: monday
    minutes: 45
    exercises:
      - Leg press: 3 x 8-12, RIR 2, rest 120 s
"""
RECORD = {
    "kind": "set",
    "id": str(UUID(int=7 + (4 << 76) + (8 << 60))),
    "at": "2026-09-07T18:00:00",
    "exercise": "leg-press",
    "load_kg": 100.0,
    "reps": 10,
}


def of(person, rest=""):
    return f"/clients/{person.uuid}{rest}"


def test_without_a_token_nothing_opens(client, person):
    assert Program(client, "")("GET", "/clients")[0] == 401
    assert Program(client, "guess")("GET", of(person))[0] == 401


def test_a_session_of_a_browser_is_no_token(as_coach):
    assert as_coach.get("/api/v1/clients").status_code == 401


def test_a_revoked_token_and_one_of_a_closed_coach_do_not_open(program, coach, token):
    revoke(coach, ApiToken.objects.get().uuid, timezone.now())
    assert program("GET", "/clients")[0] == 401
    other = make_token(coach, "another")
    coach.is_active = False
    coach.save()
    assert account_of(other, timezone.now()) is None


def test_only_the_hash_of_a_token_is_kept(program, token):
    assert token not in str(ApiToken.objects.values().get())
    assert program("GET", "/clients")[0] == 200
    assert ApiToken.objects.get().used_at is not None


def test_clients_are_listed_and_added(program, person):
    status, made = program("POST", "/clients", {"name": "Per"})
    assert status == 201
    names = [one["name"] for one in program("GET", "/clients")[1]]
    assert names == ["Oda", "Per"]
    assert program("GET", f"/clients/{made['uuid']}")[1]["has_intake"] is False


@pytest.mark.parametrize("name", ["", "\x00", "x" * 61, 5])
def test_a_name_that_cannot_be_is_refused(program, name):
    assert program("POST", "/clients", {"name": name})[0] == 422


def test_an_intake_is_saved_over_the_one_it_was_made_from_only(program, person):
    text = program("GET", of(person, "/intake"))[1]["text"]
    changed = text.replace("chest", "back")
    assert program("PUT", of(person, "/intake"), {"base": 1, "text": changed})[0] == 200
    status, answer = program("PUT", of(person, "/intake"), {"base": 1, "text": text})
    assert (status, answer["number"]) == (409, 2)
    assert program("GET", of(person, "/intake"))[1]["text"] == changed


def test_a_document_at_fault_is_refused_with_its_place(program, person):
    sent = {"base": 1, "text": "setwright: intake/1\nname: Oda\nexperience: wizard\n"}
    status, answer = program("PUT", of(person, "/intake"), sent)
    assert status == 422
    assert any(fault["line"] == 3 for fault in answer["faults"])


def test_a_plan_goes_round_and_a_stale_one_is_kept_off_the_board(program, person):
    week = of(person, "/weeks/2026-09-07")
    assert program("PUT", week, {"text": PLAN})[0] == 201
    second = {"base": 1, "text": PLAN.replace("3 x", "4 x")}
    assert program("PUT", week, second)[1]["version"] == 2
    stale = {"base": 1, "text": PLAN.replace("3 x", "5 x")}
    status, answer = program("PUT", week, stale)
    assert (status, answer["number"], answer["kept_as"]) == (409, 2, 3)
    shown = program("GET", week)[1]
    assert read_plan(shown["text"], "plan").sessions[0].exercises[0].sets == 4
    kept = PlanVersion.objects.get(number=3)
    assert read_plan(kept.text, "plan").sessions[0].exercises[0].sets == 5


def test_a_plan_for_a_tuesday_or_from_a_version_that_never_was_is_refused(program, person):
    assert program("PUT", of(person, "/weeks/2026-09-08"), {"text": PLAN})[0] == 422
    status, _ = program("PUT", of(person, "/weeks/2026-09-07"), {"base": 4, "text": PLAN})
    assert status == 409
    assert not Week.objects.exists()


def test_records_are_added_once_and_read_from_a_place(program, person):
    sent = {"records": [RECORD, {"kind": "set"}]}
    status, answer = program("POST", of(person, "/log"), sent)
    assert (status, answer["accepted"]) == (200, [RECORD["id"]])
    assert answer["refused"][0]["position"] == 1
    assert program("POST", of(person, "/log"), sent)[1]["known"] == [RECORD["id"]]
    read = program("GET", of(person, "/log"))[1]
    assert [one["id"] for one in read["records"]] == [RECORD["id"]]
    assert program("GET", of(person, f"/log?after={read['next_after']}"))[1]["records"] == []


def test_a_review_is_read_and_a_proposal_decided(program, coach):
    from datetime import date, timedelta

    from setwright.web.demo.fill import fill
    from setwright.web.models import Client

    today = date.today()
    fill(today)
    tove = Client.objects.get(name="Leila")
    tove.coach = coach
    tove.save()
    monday = today - timedelta(today.weekday() + 7)
    review = program("GET", of(tove, f"/review?week={monday}"))[1]
    first = review["proposals"][0]["id"]
    answer = {"week": str(monday), "proposal": first, "choice": "decline", "because": "not yet"}
    status, decided = program("POST", of(tove, "/decisions"), answer)
    assert (status, decided["decision"]["choice"]) == (201, "decline")
    assert program("GET", of(tove, "/decisions"))[1][0]["because"] == "not yet"
    assert program("POST", of(tove, "/decisions"), answer)[0] == 422


def test_somebody_elses_client_looks_like_none(client, person, other_coach):
    program = Program(client, make_token(other_coach, "x"))
    for path in ("", "/intake", "/weeks", "/weeks/2026-09-07", "/log", "/review", "/decisions"):
        assert program("GET", of(person, path)) == program("GET", f"/clients/{uuid4()}{path}")


def test_what_a_program_does_is_in_the_trail(program, person, coach):
    program("GET", of(person, "/intake"))
    entry = TrailEntry.objects.get(client=str(person.uuid))
    assert (entry.who, entry.what) == (str(coach.uuid), "saw")
    assert "program" in entry.detail


def test_the_description_is_there_for_programs(client):
    described = client.get("/api/v1/openapi.json").json()
    assert described["openapi"].startswith("3.")
    assert "/api/v1/clients/{client}/log" in described["paths"]
