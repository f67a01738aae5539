"""Designs in a process of their own: progress, the plan as a version, cancel, what is locked."""

import json
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest
from django.urls import reverse

from setwright.web.board import design_watch, jobs
from setwright.web.engine.folder import plan_of
from setwright.web.models import DesignJob

WAIT_S = 120


def children() -> list[str]:
    """Command lines of the processes that design."""
    found = []
    for folder in Path("/proc").glob("[0-9]*"):
        try:
            words = (folder / "cmdline").read_text().split("\0")
        except OSError:
            continue
        if "setwright.web.board.design_process" in words:
            found.append(folder.name)
    return found


def until(true, what: str):
    """Wait for something that another process brings about."""
    end = time.monotonic() + WAIT_S
    while time.monotonic() < end:
        if found := true():
            return found
        time.sleep(0.05)
    pytest.fail(f"waited in vain: {what}")


def ended():
    return DesignJob.objects.exclude(state="running").first()


@pytest.fixture
def signed_in(client, coach, transactional_db):
    client.force_login(coach)
    return client


def test_a_design_around_what_is_locked_becomes_a_version(signed_in, week, at) -> None:
    before = plan_of(week.current.text)
    week.locked = ["monday/back-squat", "thursday/dumbbell-curl"]
    week.save()
    page = signed_in.get(at("board-design")).content.decode()
    assert "Back squat" in page and "Dumbbell curl" in page
    assert signed_in.post(at("board-design"), {"seconds": "2"}).status_code == 302
    running = signed_in.get(at()).content.decode()
    assert "Designing:" in running
    job = until(ended, "the design")
    assert job.state == "done", job.message
    week.refresh_from_db()
    made = week.current
    assert (made.number, made.parent.number) == (2, 1)
    assert made.what == "designed from the intake around 2 locked"
    after = plan_of(made.text)
    monday = {one.exercise: one for one in after.sessions[0].exercises}
    thursday = {one.exercise: one for one in after.sessions[1].exercises}
    assert monday["back-squat"] == before.sessions[0].exercises[0]
    assert thursday["dumbbell-curl"] == before.sessions[1].exercises[1]
    assert len(monday) + len(thursday) > 6
    assert "How good this design is" in signed_in.get(at()).content.decode()
    signed_in.post(at("board-undo"), {"base": 2})
    week.refresh_from_db()
    assert week.current.number == 1


def test_a_week_changed_meanwhile_is_left_as_it_is(signed_in, week, at) -> None:
    signed_in.post(at("board-design"), {"seconds": "1"})
    asked = {"base": 1, "do": "sets", "by": "1", "at": "0.0", "exercise": "back-squat"}
    assert signed_in.post(at("board-edit"), asked).status_code == 302
    until(ended, "the design")
    week.refresh_from_db()
    assert week.current.number == 2 and week.versions.get(number=3).parent.number == 1
    text = signed_in.get(at()).content.decode()
    assert "kept as version 3 beside the board" in text and "?a=2&amp;b=3" in text


def test_cancel_ends_the_process(signed_in, week, at) -> None:
    signed_in.post(at("board-design"), {"seconds": "120"})
    until(children, "the process")
    job = DesignJob.objects.get()
    poll = reverse("board-job", args=(week.client_id, week.starts, job.pk))
    answer = signed_in.get(poll, headers={"HX-Request": "true"})
    assert b"<progress" in answer.content and "HX-Redirect" not in answer.headers
    # A second wish while one runs is the same one.
    signed_in.post(at("board-design"), {"seconds": "1"})
    assert DesignJob.objects.count() == 1
    cancel = reverse("board-cancel", args=(week.client_id, week.starts, job.pk))
    assert signed_in.post(cancel).status_code == 302
    until(lambda: not children(), "the end of the process")
    week.refresh_from_db()
    assert week.current.number == 1 and week.versions.count() == 1
    job.refresh_from_db()
    assert job.state == "cancelled"
    answer = signed_in.get(poll, headers={"HX-Request": "true"})
    assert answer.headers["HX-Redirect"] == at()


def test_no_more_designs_at_a_time_than_the_server_bears(signed_in, week, at, monkeypatch) -> None:
    full = threading.BoundedSemaphore(1)
    full.acquire()
    monkeypatch.setattr(design_watch, "_SLOTS", full)
    signed_in.post(at("board-design"), {"seconds": "1"})
    until(lambda: DesignJob.objects.get().message.startswith("waiting"), "the wait")
    assert not children()
    full.release()
    until(ended, "the design")
    assert DesignJob.objects.get().state == "done"


def test_the_process_ends_with_whoever_started_it(person) -> None:
    command = [sys.executable, "-m", "setwright.web.board.design_process"]
    process = subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
    order = {"intake": person.intakes.get().text, "keep": "", "seconds": 120}
    process.stdin.write(json.dumps(order) + "\n")
    process.stdin.flush()
    assert "searching" in process.stdout.readline()
    process.stdin.close()
    assert process.wait(timeout=WAIT_S) == 0
    process.stdout.close()


def test_what_cannot_be_designed_says_why(signed_in, week, at, person) -> None:
    week.locked = ["monday/back-squat"]
    week.save()
    intake = person.intakes.get()
    intake.text = intake.text.replace("monday 60 min, thursday", "tuesday 60 min, thursday")
    intake.save()
    signed_in.post(at("board-design"), {"seconds": "1"})
    job = until(ended, "the refusal")
    assert job.state == "failed" and "monday" in job.message
    assert "The design failed" in signed_in.get(at()).content.decode()


def test_a_job_whose_server_went_away_does_not_run_for_ever(week, coach) -> None:
    job = DesignJob.objects.create(week=week, base=week.current, asked_by=coach)
    assert not jobs.lost(job)
    long_ago = job.seen_at - 2 * jobs.LOST_AFTER
    DesignJob.objects.filter(pk=job.pk).update(seen_at=long_ago)
    job.refresh_from_db()
    assert jobs.lost(job) and job.state == "failed"


def test_without_an_intake_there_is_nothing_to_design_from(as_coach, week, at, person) -> None:
    person.intakes.all().delete()
    answer = as_coach.post(at("board-design"), {"seconds": "1"})
    assert answer.status_code == 422 and b"no intake yet" in answer.content
