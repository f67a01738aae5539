"""The roster page, the client's page, notes, pictures, documents, putting away."""

from datetime import timedelta

import pytest
from django.urls import reverse

from setwright.plan.client_folder import open_folder
from setwright.training.review import review
from setwright.web.engine.folder import folder_of
from setwright.web.models import Client, TrailEntry

from .conftest import LAST, THIS, TODAY, week


def address(client, page="client", **words):
    return reverse(page, kwargs={"client": client.uuid, **words})


def test_the_roster_shows_who_needs_what_and_links_there(as_coach, hurting) -> None:
    page = as_coach.get(reverse("roster"))
    text = page.content.decode()
    assert [words for words, _ in page.context["groups"]] == ["Look at first"]
    assert "Pain reported: Barbell bench press (left shoulder 6 of 10)." in text
    assert f'href="{address(hurting, "review")}?week={THIS}"' in text
    assert "Trained Mon 23 Nov." in text and "Next: Lower, Thu 26 Nov." in text
    assert TrailEntry.objects.filter(what="saw", detail="roster").count() == 1


def test_the_roster_is_searched_by_name(as_coach, practice, coach, person) -> None:
    Client.objects.create(organisation=practice, coach=coach, name="Pia")
    found = as_coach.get(reverse("roster"), {"q": "pi"}).content.decode()
    assert "Pia" in found and ">Oda<" not in found
    none = as_coach.get(reverse("roster"), {"q": "<b>"}).content.decode()
    assert "No client is called “&lt;b&gt;”." in none
    part = as_coach.get(reverse("roster"), {"q": "pi"}, headers={"HX-Target": "clients"})
    assert part.content.decode().lstrip().startswith('<div id="clients">')


def test_a_roster_not_yet_computed_asks_for_the_rest(
    as_coach, practice, coach, monkeypatch
) -> None:
    monkeypatch.setattr("setwright.web.views.roster.BUDGET_S", 0.0)
    for name in ("Aud", "Pia", "Ulf"):
        Client.objects.create(organisation=practice, coach=coach, name=name)
    first = as_coach.get(reverse("roster"))
    assert len(first.context["waiting"]) == 2
    assert "Not looked through yet" in first.content.decode()
    whole = as_coach.get(reverse("roster"), {"all": ""})
    assert whole.context["waiting"] == []


def test_a_client_is_added_and_goes_on_to_the_intake(as_coach, coach) -> None:
    answer = as_coach.post(reverse("client-add"), {"name": "Pia"})
    new = Client.objects.get(name="Pia")
    assert answer.headers["Location"] == address(new, "intake")
    assert new.coach == coach and new.organisation == coach.organisation
    again = as_coach.post(reverse("client-add"), {"name": " "})
    assert again.status_code == 422 and "This field is required" in again.content.decode()


def test_archived_clients_leave_the_roster_and_come_back(as_coach, person) -> None:
    as_coach.post(address(person, "client-archive"))
    assert ">Oda<" not in as_coach.get(reverse("roster")).content.decode()
    assert ">Oda<" in as_coach.get(reverse("roster"), {"archived": ""}).content.decode()
    assert "Restore to the roster" in as_coach.get(address(person)).content.decode()
    as_coach.post(address(person, "client-restore"))
    assert ">Oda<" in as_coach.get(reverse("roster")).content.decode()
    told = list(TrailEntry.objects.filter(client=str(person.uuid)).values_list("what", flat=True))
    assert told.count("archived the client") == told.count("restored the client") == 1


def test_the_page_of_a_client_tells_what_there_is(as_coach, hurting) -> None:
    hurting.notes = "Likes to know why."
    hurting.save()
    week(hurting, THIS + timedelta(7), sent=False)
    page = as_coach.get(address(hurting))
    text = page.content.decode()
    assert [(row.state, row.now) for row in page.context["weeks"]] == [
        ("draft", False),
        ("sent", True),
    ]
    assert [(one.day, one.name) for one in page.context["coming"]][:2] == [
        (THIS + timedelta(3), "Lower"),
        (THIS + timedelta(7), "Upper"),
    ]
    days = page.context["days"]
    assert days[0].day == THIS and days[0].done[0].sets[0] == "64 kg × 10, RIR 2"
    hurt = next(day for day in days if day.day == LAST)
    assert hurt.done[0].remarks == ("PAIN left shoulder 6/10",)
    assert {row.exercise for row in page.context["strength"]} >= {"Barbell bench press"}
    for words in ("Monday 60 min and Thursday 60 min", "Likes to know why.", "chest",
                  "a licensed professional does"):  # fmt: skip
        assert words in text


def test_cautions_of_the_screening_are_heeded(as_coach, person) -> None:
    version = person.intakes.get()
    version.text = version.text.replace("{active", "{high_blood_pressure: yes, active")
    version.save()
    assert "hold no breath" in as_coach.get(address(person)).content.decode()


def test_a_client_without_anything_has_a_page(as_coach, practice, coach) -> None:
    new = Client.objects.create(organisation=practice, coach=coach, name="Pia")
    text = as_coach.get(address(new)).content.decode()
    assert "Make the intake" in text and "No intake yet." in text


def test_notes_are_saved_and_never_over_others(as_coach, person) -> None:
    state = as_coach.get(address(person)).context["notes_state"]
    url = address(person, "client-notes")
    assert as_coach.post(url, {"notes": "one\r\ntwo", "state": state}).status_code == 302
    person.refresh_from_db()
    assert person.notes == "one\ntwo"
    # A second page, opened before, must not put its own over them.
    late = as_coach.post(url, {"notes": "three", "state": state})
    text = late.content.decode()
    assert late.status_code == 409 and "three" in text and "one\ntwo" in text
    person.refresh_from_db()
    assert person.notes == "one\ntwo"
    now = late.context["notes_state"]
    assert as_coach.post(url, {"notes": "one\ntwo\nthree", "state": now}).status_code == 302
    person.refresh_from_db()
    assert person.notes == "one\ntwo\nthree"
    long = as_coach.post(url, {"notes": "x" * 20_001, "state": now})
    assert long.status_code == 422 and "x" * 20_001 in long.content.decode()


@pytest.mark.parametrize("name", ["strength", "done"])
def test_pictures_of_the_log(as_coach, hurting, name) -> None:
    url = address(hurting, "client-picture", name=name)
    picture = as_coach.get(url)
    assert picture.headers["Content-Type"] == "image/svg+xml"
    assert b"<svg" in picture.content and b"<script" not in picture.content
    assert "private" in picture.headers["Cache-Control"]
    assert as_coach.get(url).content == picture.content


def test_there_are_no_pictures_of_nothing(as_coach, person) -> None:
    assert as_coach.get(address(person, "client-picture", name="strength")).status_code == 404
    assert as_coach.get(address(person, "client-picture", name="done")).status_code == 404
    assert as_coach.get(address(person, "client-picture", name="other")).status_code == 404


def test_documents_are_a_folder_of_the_command_line(as_coach, hurting, tmp_path) -> None:
    for path in as_coach.get(address(hurting)).context["documents"]:
        file = tmp_path / path
        file.parent.mkdir(exist_ok=True)
        answer = as_coach.get(address(hurting, "client-file", path=path))
        assert answer.headers["Content-Disposition"].startswith("attachment")
        file.write_bytes(answer.content)
    folder = open_folder(tmp_path)
    mine, theirs = review(folder, LAST, TODAY), review(folder_of(hurting), LAST, TODAY)
    assert mine.proposals == theirs.proposals
    assert mine.facts.sessions == theirs.facts.sessions
    exported = TrailEntry.objects.filter(client=str(hurting.uuid), what="exported")
    assert exported.count() == 4


@pytest.mark.parametrize("path", ["../intake.yaml", "plans/2026-01-05.yaml", "x", "log.jsonl/"])
def test_there_are_no_other_documents(as_coach, hurting, path) -> None:
    url = address(hurting, "client-file", path="x").removesuffix("x") + path
    assert as_coach.get(url).status_code == 404


PAGES = [
    ("client", {}), ("review", {}), ("intake", {}), ("intake-document", {}), ("intake-import", {}),
    ("intake-version", {"number": 1}), ("client-picture", {"name": "strength"}),
    ("client-file", {"path": "log.jsonl"}),
]  # fmt: skip
ACTIONS = [
    ("client-archive", {}), ("client-restore", {}), ("client-notes", {}), ("intake", {}),
    ("intake-document", {}), ("intake-import", {}), ("intake-put-back", {"number": 1}),
    ("review-decide", {"monday": LAST}), ("review-send", {"monday": LAST}),
]  # fmt: skip


@pytest.mark.parametrize("who", ["other_coach", "owner", "client"])
def test_nobody_elses_clients_are_there(client, hurting, request, who) -> None:
    account = hurting.account if who == "client" else request.getfixturevalue(who)
    client.force_login(account)
    for name, words in PAGES:
        assert client.get(address(hurting, name, **words)).status_code == 404, name
    for name, words in ACTIONS:
        assert client.post(address(hurting, name, **words)).status_code == 404, name
    assert TrailEntry.objects.filter(client=str(hurting.uuid)).count() == 0


def test_strangers_are_sent_to_the_sign_in(client, hurting) -> None:
    for name, words in [*PAGES, *ACTIONS]:
        answer = client.post(address(hurting, name, **words))
        assert answer.headers["Location"].startswith(reverse("sign-in")), name
