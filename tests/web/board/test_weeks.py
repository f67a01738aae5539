"""Weeks begun: empty, as a copy, from a file; from a design in its own tests."""

from datetime import date

from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse

from setwright.web.engine.folder import plan_of
from setwright.web.models import Week

NOTES = """\
Monday 60 min
Back squat 3x6-8 RIR 2-1 rest 3 min
Wobble-thing 3x10 RIR 2
Thursday
Lat pulldown 3x8-10 RIR 2-1 rest 2 min
"""


def weeks(person) -> str:
    return reverse("weeks", args=(person.uuid,))


def test_begins_empty_and_gets_a_first_session(as_coach, person) -> None:
    answer = as_coach.post(weeks(person), {"starts": "2026-09-14", "source": "empty"})
    week = Week.objects.get()
    board = reverse("board", args=(person.uuid, date(2026, 9, 14)))
    assert answer.headers["Location"] == board and week.current is None
    assert "This week is empty" in as_coach.get(board).content.decode()
    found = as_coach.get(board + "?add=day&q=squat").content.decode()
    assert 'value="back-squat"' in found and 'value="sunday"' in found
    edit = reverse("board-edit", args=(person.uuid, week.starts))
    asked = {"base": 1, "do": "add-session", "day": "monday", "new": "back-squat"}
    assert as_coach.post(edit, asked).status_code == 302
    week.refresh_from_db()
    plan = plan_of(week.current.text)
    assert plan.sessions[0].day == "monday" and plan.sessions[0].minutes == 60
    undone = as_coach.post(reverse("board-undo", args=(person.uuid, week.starts)), {"base": 1})
    assert undone.status_code == 302


def test_a_copy_begins_with_the_same_plan(as_coach, person, week) -> None:
    page = as_coach.get(weeks(person)).content.decode()
    assert "of 7 September 2026" in page
    as_coach.post(weeks(person), {"starts": "2026-09-14", "source": "copy", "of": str(week.uuid)})
    fresh = Week.objects.get(starts=date(2026, 9, 14))
    assert plan_of(fresh.current.text) == plan_of(week.current.text)
    assert fresh.sent is None


def test_nothing_is_begun_twice_or_on_another_day(as_coach, person, week) -> None:
    there = {"starts": str(week.starts), "source": "empty"}
    assert as_coach.post(weeks(person), there).status_code == 302
    tuesday = as_coach.post(weeks(person), {"starts": "2026-09-15", "source": "empty"})
    assert tuesday.status_code == 422 and b"begin on a Monday" in tuesday.content
    nothing = as_coach.post(weeks(person), {"starts": "2026-09-21", "source": "copy", "of": "x"})
    assert nothing.status_code == 422
    assert Week.objects.count() == 1


def test_a_file_is_shown_before_it_is_taken(as_coach, person) -> None:
    address = reverse("week-import", args=(person.uuid,))
    upload = SimpleUploadedFile("notes.txt", NOTES.encode())
    shown = as_coach.post(address, {"starts": "2026-09-14", "file": upload})
    text = shown.content.decode()
    assert shown.status_code == 200 and not Week.objects.exists()
    assert "Wobble-thing" in text and "Needs your word" in text and "Back squat: 3 x 6-8" in text
    held = text.split('name="held" value="')[1].split('"')[0]
    kept = {"starts": "2026-09-14", "held": held, "name": "notes.txt"}
    answered = as_coach.post(address, {**kept, "answer 3": "Dumbbell curl 3x10 RIR 2"})
    assert "Dumbbell curl: 3 x 10" in answered.content.decode()
    taken = as_coach.post(address, {**kept, "answer 3": "skip", "take": "yes"})
    assert taken.status_code == 302
    week = Week.objects.get()
    assert week.current.what == "imported from notes.txt"
    assert [len(one.exercises) for one in plan_of(week.current.text).sessions] == [1, 1]


def test_a_plan_of_our_own_is_read_as_it_is(as_coach, person, week) -> None:
    address = reverse("week-import", args=(person.uuid,))
    pasted = {"starts": "2026-09-14", "text": week.current.text}
    shown = as_coach.post(address, pasted)
    assert b"Back squat: 3 x 6-8" in shown.content
    as_coach.post(address, {**pasted, "take": "yes"})
    fresh = Week.objects.get(starts=date(2026, 9, 14))
    assert plan_of(fresh.current.text) == plan_of(week.current.text)


def test_what_cannot_be_read_is_said(as_coach, person) -> None:
    address = reverse("week-import", args=(person.uuid,))
    for fields, said in (
        ({"text": "setwright: plan/1\ntitle: t\n"}, "sessions"),
        ({"text": ""}, "Choose a file"),
        ({"held": "%%%"}, "once more"),
    ):
        answer = as_coach.post(address, {"starts": "2026-09-14", **fields})
        assert answer.status_code == 422 and said in answer.content.decode()
    assert not Week.objects.exists()
