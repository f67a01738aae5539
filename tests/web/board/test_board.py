"""The board over HTTP: what it shows, and every action as a plain form."""

import re

import pytest
from django.urls import reverse

from setwright.web.engine.folder import plan_of
from setwright.web.models import TrailEntry


def plan(week):
    week.refresh_from_db()
    return plan_of(week.current.text)


def ids(week, session=0):
    return [entry.exercise for entry in plan(week).sessions[session].exercises]


def base(week):
    week.refresh_from_db()
    return week.current.number


def ask(as_coach, week, address, do, **fields):
    return as_coach.post(address("board-edit"), {"base": base(week), "do": do, **fields})


SQUAT = {"at": "0.0", "exercise": "back-squat"}


def test_shows_every_exercise_remarks_and_doses(as_coach, week, at) -> None:
    text = as_coach.get(at()).content.decode()
    for name in ("Back squat", "Lat pulldown", "Dumbbell curl"):
        assert name in text
    assert "Audit:" in text and "Dose a week" in text
    assert "style=" not in text and "onclick" not in text
    assert TrailEntry.objects.filter(client=str(week.client_id), what="saw").exists()


def test_opens_an_exercise_with_all_its_looks(as_coach, week, at) -> None:
    profile = as_coach.get(at() + "?at=0.0&show=profile").content.decode()
    assert "vastus lateralis" in profile and "Length under load" in profile
    why = as_coach.get(at() + "?at=0.0&show=why").content.decode()
    assert "Back squat trains" in why
    swaps = as_coach.get(at() + "?at=0.0&show=substitutes").content.decode()
    assert "Put in" in swaps and re.search(r"[+-]\d\.\d %", swaps)


def test_a_look_at_what_is_gone_shows_the_board(as_coach, week, at) -> None:
    for query in ("?at=7.1", "?session=9", "?at=x", "?session=x"):
        assert as_coach.get(at() + query).status_code == 200


@pytest.mark.parametrize(
    ("do", "fields", "expected"),
    [
        ("sets", {**SQUAT, "by": "1"}, lambda p: p.sessions[0].exercises[0].sets == 4),
        ("remove", SQUAT, lambda p: p.sessions[0].exercises[0].exercise != "back-squat"),
        ("replace", {**SQUAT, "new": "leg-press"},
         lambda p: p.sessions[0].exercises[0].exercise == "leg-press"),
        ("move", {**SQUAT, "to": "1.1"},
         lambda p: p.sessions[1].exercises[1].exercise == "back-squat"),
        ("move", {**SQUAT, "to": "friday"}, lambda p: p.sessions[2].day == "friday"),
        ("join", SQUAT, lambda p: [e.superset for e in p.sessions[0].exercises][:3] == ["A"] * 3),
        ("add", {"session": "1", "new": "leg-curl-seated"}, None),
        ("add", {"session": "1", "new": "leg-press"},
         lambda p: p.sessions[1].exercises[-1].exercise == "leg-press"),
        ("add-session", {"day": "saturday", "new": "leg-press"},
         lambda p: p.sessions[2].day == "saturday"),
        ("session", {"session": "1", "name": "Pull", "day": "friday", "minutes": "50"},
         lambda p: (p.sessions[1].name, p.sessions[1].day, p.sessions[1].minutes)
         == ("Pull", "friday", 50)),
        ("remove-session", {"session": "1"}, lambda p: len(p.sessions) == 1),
        ("prescribe",
         {**SQUAT, "sets": "5", "reps_low": "5", "reps_high": "6", "rir_first": "3",
          "rir_last": "1.5", "rest_low": "180", "rest_high": "240", "load": "82.5", "note": "deep"},
         lambda p: p.sessions[0].exercises[0].model_dump(exclude_defaults=True)
         == {"exercise": "back-squat", "sets": 5, "reps": (5, 6), "rir": (3.0, 1.5),
             "rest_s": (180, 240), "load_kg": 82.5, "note": "deep"}),
    ],
)  # fmt: skip
def test_every_action_is_a_plain_form(as_coach, week, at, do, fields, expected) -> None:
    answer = ask(as_coach, week, at, do, **fields)
    if expected is None:
        assert answer.status_code == 422 and base(week) == 1
        return
    assert answer.status_code == 302, answer.content.decode()[:2000]
    assert base(week) == 2
    assert expected(plan(week))
    assert week.current.parent.number == 1


def test_refusals_keep_what_was_typed(as_coach, week, at) -> None:
    typed = {**SQUAT, "sets": "3", "reps_low": "12", "reps_high": "6", "rir_first": "3",
             "rir_last": "1", "rest_low": "180", "rest_high": "240", "note": "kept"}  # fmt: skip
    answer = ask(as_coach, week, at, "prescribe", **typed)
    text = answer.content.decode()
    assert answer.status_code == 422 and base(week) == 1
    assert 'value="kept"' in text and "Not lower than" in text
    least = ask(as_coach, week, at, "sets", **SQUAT, by="-3")
    assert least.status_code == 422 and "One set is the fewest" in least.content.decode()
    assert ask(as_coach, week, at, "dance").status_code == 422
    assert as_coach.post(at("board-edit"), {"do": "sets", **SQUAT, "by": "1"}).status_code == 422


def test_undo_and_redo_restore_the_bytes(as_coach, week, at) -> None:
    before = week.current.text
    ask(as_coach, week, at, "sets", **SQUAT, by="1")
    week.refresh_from_db()
    after = week.current.text
    as_coach.post(at("board-undo"), {"base": 2})
    week.refresh_from_db()
    assert week.current.text == before
    as_coach.post(at("board-undo"), {"base": 1})
    assert base(week) == 1
    as_coach.post(at("board-redo"), {"base": 1})
    week.refresh_from_db()
    assert week.current.text == after and week.undone == []


def test_an_edit_after_undo_leaves_both_lines_in_the_versions(as_coach, week, at) -> None:
    ask(as_coach, week, at, "sets", **SQUAT, by="1")
    as_coach.post(at("board-undo"), {"base": 2})
    ask(as_coach, week, at, "remove", **SQUAT)
    week.refresh_from_db()
    assert (week.current.number, week.current.parent.number, week.undone) == (3, 1, [])
    assert week.versions.count() == 3


def test_locks_follow_their_exercise(as_coach, week, at) -> None:
    as_coach.post(at("board-lock"), {"key": "monday/back-squat", "on": "yes", "at": "0.0"})
    week.refresh_from_db()
    assert week.locked == ["monday/back-squat"]
    ask(as_coach, week, at, "move", **SQUAT, to="1.0")
    week.refresh_from_db()
    assert week.locked == ["thursday/back-squat"]
    ask(as_coach, week, at, "remove", at="1.0", exercise="back-squat")
    week.refresh_from_db()
    assert week.locked == []


def test_the_smallest_change_that_helps_is_one_button(as_coach, week, at) -> None:
    text = as_coach.get(at()).content.decode()
    button = re.search(r'form="mend" name="remark" value="(coverage\|[^"]+)"', text)
    assert button is not None
    before = [len(one.exercises) for one in plan(week).sessions]
    assert ask(as_coach, week, at, "mend", remark=button[1]).status_code == 302
    assert sum(len(one.exercises) for one in plan(week).sessions) == sum(before) + 1
    again = ask(as_coach, week, at, "mend", remark=button[1])
    gone = ask(as_coach, week, at, "mend", remark="coverage|nobody")
    assert again.status_code in (302, 422) and gone.status_code == 422
    assert "does not say that any more" in gone.content.decode()


def test_sending_gives_the_client_what_was_looked_at(as_coach, week, at) -> None:
    ask(as_coach, week, at, "sets", **SQUAT, by="1")
    assert as_coach.post(at("board-send"), {"base": 1}).status_code == 409
    week.refresh_from_db()
    assert week.sent is None
    as_coach.post(at("board-send"), {"base": 2})
    week.refresh_from_db()
    assert week.sent == week.current and week.sent_at is not None
    assert TrailEntry.objects.filter(client=str(week.client_id), what="sent").count() == 1


def test_a_script_gets_only_the_part_it_asked_for(as_coach, week, at) -> None:
    panel = as_coach.get(at() + "?at=0.0", headers={"HX-Request": "true", "HX-Target": "panel"})
    assert b"<html" not in panel.content and b"Alternate with" in panel.content
    fresh = as_coach.post(
        at("board-edit"), {"base": 1, "do": "sets", **SQUAT, "by": "1"},
        headers={"HX-Request": "true", "HX-Target": "board"},
    )  # fmt: skip
    text = fresh.content.decode()
    assert fresh.status_code == 200 and "<html" not in text
    assert 'data-base="2"' in text and 'data-said="Back squat: 4 sets"' in text
    assert fresh.headers["HX-Replace-Url"].endswith("?at=0.0")


def test_other_coaches_and_clients_see_nothing(client, week, at, other_coach, person) -> None:
    names = ("board", "board-versions", "board-design", "board-compare")
    for account in (other_coach, person.account):
        client.force_login(account)
        for name in names:
            assert client.get(at(name)).status_code == 404
        for name in ("board-edit", "board-undo", "board-lock", "board-send", "board-put-back"):
            assert client.post(at(name), {"base": 1}).status_code == 404
        assert client.get(reverse("weeks", args=(person.uuid,))).status_code == 404


def test_any_other_day_is_no_week(as_coach, week) -> None:
    address = f"/clients/{week.client_id}/weeks/"
    assert as_coach.get(address + "2026-09-08").status_code == 404
    assert as_coach.get(address + "2026-09-14").status_code == 404
    assert as_coach.get(address + "2026-13-41").status_code == 404
