"""Everything of a person out, back in, and gone."""

import gc
import io
import zipfile
from datetime import datetime
from functools import _lru_cache_wrapper
from inspect import signature

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile

from setwright.plan.client_folder import open_folder
from setwright.plan.decision import Decision
from setwright.plan.log_store import line_of
from setwright.training.review import review
from setwright.web.engine.append import append_records
from setwright.web.engine.folder import folder_of
from setwright.web.models import Client, DecisionEntry, TrailEntry

from .conftest import MONDAY, NEXT


def record(number, **more):
    ident = f"00000000-0000-4000-8000-{number:012}"
    base = {"kind": "set", "id": ident, "at": "2026-09-07T18:00:00", "exercise": "leg-press"}
    return base | {"load_kg": 100.0, "reps": 10} | more


@pytest.fixture
def lived(person, week, draft, coach):
    """A client with something of every kind."""
    person.notes = "Sleeps badly.\nWorks nights."
    person.save()
    append_records(person, [record(1), record(2, rir=2.0, note="felt the knee")], person.account)
    decision = Decision(
        id="00000000-0000-4000-8000-000000000009", at=datetime(2026, 9, 13, 20), week=MONDAY,
        proposal="abc", choice="decline", because="not now",
    )  # fmt: skip
    DecisionEntry.objects.create(
        client=person, decision_id=decision.id, text=line_of(decision), made_by=coach
    )
    return person


def exported(as_coach, client):
    answer = as_coach.get(f"/clients/{client.uuid}/everything.zip")
    assert answer["Content-Type"] == "application/zip"
    return answer.content


def imported(as_coach, data):
    answer = as_coach.post("/clients/import", {"file": SimpleUploadedFile("a.zip", data)})
    assert answer.status_code == 302, answer.content.decode()
    return Client.objects.get(uuid=answer["Location"].rpartition("/")[2])


def known(client):
    folder = folder_of(client)
    return folder.intake, folder.plans, folder.log.records, folder.decisions


def test_the_command_line_reviews_what_was_exported(as_coach, lived, tmp_path):
    zipfile.ZipFile(io.BytesIO(exported(as_coach, lived))).extractall(tmp_path)
    folder = open_folder(tmp_path / "oda")
    assert (folder.intake, folder.plans, folder.log.records, folder.decisions) == known(lived)
    assert review(folder, MONDAY).facts.monday == MONDAY


def test_an_archive_holds_drafts_versions_notes_and_the_trail_too(as_coach, lived):
    archive = zipfile.ZipFile(io.BytesIO(exported(as_coach, lived)))
    names = {name.partition("/")[2] for name in archive.namelist()}
    assert {f"drafts/{NEXT}.yaml", f"versions/{MONDAY}-0001.yaml", "trail.csv"} <= names
    assert "Sleeps badly." in archive.read("oda/about.json").decode()
    assert "exported" in archive.read("oda/trail.csv").decode()


def test_out_and_in_again_is_the_same_client(as_coach, lived):
    again = imported(as_coach, exported(as_coach, lived))
    assert again.uuid != lived.uuid
    assert known(again) == known(lived)
    assert (again.name, again.notes) == (lived.name, lived.notes)
    assert again.weeks.get(starts=NEXT).sent is None
    assert again.weeks.get(starts=NEXT).current is not None


def test_out_in_and_out_again_is_the_same_folder(as_coach, lived):
    first = zipfile.ZipFile(io.BytesIO(exported(as_coach, lived)))
    again = imported(as_coach, exported(as_coach, lived))
    second = zipfile.ZipFile(io.BytesIO(exported(as_coach, again)))
    for name in ("intake.yaml", "log.jsonl", "decisions.jsonl", f"plans/{MONDAY}.yaml"):
        assert first.read(f"oda/{name}") == second.read(f"oda/{name}")


def test_a_folder_of_the_command_line_zipped_by_hand_is_read(as_coach, tmp_path):
    from tests.web.conftest import INTAKE

    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        archive.writestr("some/where/intake.yaml", INTAKE)
        archive.writestr("some/where/../../etc/passwd", "no")
    client = imported(as_coach, out.getvalue())
    assert client.name == "Oda"
    assert client.log.count() == 0


def test_a_broken_record_refuses_the_archive_whole(as_coach, lived):
    out = io.BytesIO()
    whole = zipfile.ZipFile(io.BytesIO(exported(as_coach, lived)))
    with zipfile.ZipFile(out, "w") as archive:
        for name in whole.namelist():
            text = whole.read(name).decode()
            archive.writestr(name, text.replace('"reps":10', '"reps":-3'))
    before = Client.objects.count()
    data = SimpleUploadedFile("a.zip", out.getvalue())
    answer = as_coach.post("/clients/import", {"file": data})
    assert answer.status_code == 422
    assert "log.jsonl:1" in answer.content.decode()
    assert Client.objects.count() == before


def test_a_client_gets_everything_but_the_coachs_notes(client, lived):
    client.force_login(lived.account)
    archive = zipfile.ZipFile(io.BytesIO(client.get("/today/everything.zip").content))
    assert "Sleeps" not in archive.read("oda/about.json").decode()
    assert "felt the knee" in archive.read("oda/log.jsonl").decode()


def test_erasing_needs_the_name(as_coach, lived):
    answer = as_coach.post(f"/clients/{lived.uuid}/erase", {"name": "oda"})
    assert answer.status_code == 422
    assert Client.objects.filter(uuid=lived.uuid).exists()


@pytest.mark.django_db(transaction=True)
def test_erased_is_every_row_and_the_trail_stays_without_a_name(as_coach, lived):
    from django.apps import apps

    uuid, account = lived.uuid, lived.account.pk
    assert as_coach.post(f"/clients/{uuid}/erase", {"name": "Oda"}).status_code == 302
    left = {
        model.__name__: model.objects.count()
        for model in apps.get_app_config("workspace").get_models()
    }
    gone = ("Client", "IntakeVersion", "Week", "PlanVersion", "LogEntry", "DecisionEntry")
    assert {name: left[name] for name in gone} == dict.fromkeys(gone, 0)
    assert not apps.get_model("workspace", "Account").objects.filter(pk=account).exists()
    kept = TrailEntry.objects.filter(client=str(uuid))
    assert "erased" in kept.values_list("what", flat=True)
    assert "Oda" not in str(list(kept.values()))


# What is kept of the program itself, as what is kept of no arguments: no person can be in it.
OF_THE_PROGRAM = {"icon"}


@pytest.mark.django_db(transaction=True)
def test_erased_is_what_was_held_in_memory(as_coach, lived):
    pages = ("", "/review", "/intake", f"/weeks/{MONDAY}", f"/weeks/{MONDAY}?at=0.0&show=why")
    for page in (*pages, "/pictures/strength.svg"):
        as_coach.get(f"/clients/{lived.uuid}{page}")
    assert personal_answers()
    as_coach.post(f"/clients/{lived.uuid}/erase", {"name": "Oda"})
    assert personal_answers() == []


def personal_answers():
    """Caches of the workspace that hold something, by name."""
    held = []
    for one in gc.get_objects():
        if isinstance(one, _lru_cache_wrapper) and one.__module__.startswith("setwright.web."):
            of = one.__module__.rpartition(".")[2]
            asked = signature(one).parameters and of not in OF_THE_PROGRAM
            if asked and one.cache_info().currsize:
                held.append(f"{one.__module__}.{one.__name__}")
        elif type(one).__name__ == "Kept" and getattr(one, "_answers", None):
            held.append("Kept")
    return held
