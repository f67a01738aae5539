"""Two who edit one week: the second is told what happened, and nothing is lost."""

from threading import Thread

from django.db import connection
from django.test import Client

from setwright.web.engine.folder import plan_of

SQUAT = {"at": "0.0", "exercise": "back-squat"}
CURL = {"at": "1.1", "exercise": "dumbbell-curl"}


def test_the_second_writer_is_told_and_both_are_kept(as_coach, week, at, coach) -> None:
    first = {"base": 1, "do": "remove", **CURL}
    assert as_coach.post(at("board-edit"), first).status_code == 302
    typed = {
        "base": "1", "do": "prescribe", **SQUAT, "sets": "5", "reps_low": "4", "reps_high": "5",
        "rir_first": "3", "rir_last": "2", "rest_low": "180", "rest_high": "240",
        "load": "", "note": "my own words",
    }  # fmt: skip
    answer = as_coach.post(at("board-edit"), typed)
    text = answer.content.decode()
    assert answer.status_code == 409
    assert "Version 2: Dumbbell curl taken out of Thursday" in text and coach.name in text
    week.refresh_from_db()
    assert week.current.number == 2
    mine = week.versions.get(number=3)
    assert mine.parent.number == 1
    kept = plan_of(mine.text)
    assert kept.sessions[0].exercises[0].note == "my own words"
    assert len(kept.sessions[1].exercises) == 2

    # What was typed can be done on the other's version as it stands in the answer.
    for name, value in typed.items():
        if name != "base":
            assert f'name="{name}" value="{value}"' in text
    again = as_coach.post(at("board-edit"), {**typed, "base": "2"})
    assert again.status_code == 302
    week.refresh_from_db()
    both = plan_of(week.current.text)
    assert both.sessions[0].exercises[0].note == "my own words"
    assert len(both.sessions[1].exercises) == 1


def test_many_at_once_lose_nothing(client, coach, transactional_db, week, at) -> None:
    client.force_login(coach)
    cookies = client.cookies
    answers = []

    def write(number: int) -> None:
        own = Client()
        own.cookies = cookies
        asked = {"base": 1, "do": "sets", "by": str(number), **SQUAT}
        answers.append(own.post(at("board-edit"), asked).status_code)
        connection.close()

    threads = [Thread(target=write, args=(number,)) for number in range(1, 7)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert sorted(answers) == [302, 409, 409, 409, 409, 409]
    week.refresh_from_db()
    versions = list(week.versions.all())
    assert [one.number for one in versions] == list(range(1, 8))
    sets = [plan_of(one.text).sessions[0].exercises[0].sets for one in versions]
    assert sorted(sets[1:]) == [4, 5, 6, 7, 8, 9]
    assert week.current.number == 2


def test_a_script_is_told_in_its_place(as_coach, week, at) -> None:
    as_coach.post(at("board-edit"), {"base": 1, "do": "remove", **CURL})
    answer = as_coach.post(
        at("board-edit"), {"base": 1, "do": "sets", "by": "1", **SQUAT},
        headers={"HX-Request": "true"},
    )  # fmt: skip
    assert answer.status_code == 409 and b"<html" not in answer.content
    assert answer.headers["HX-Retarget"] == "#notice"


def test_undo_of_an_older_board_does_nothing(as_coach, week, at) -> None:
    as_coach.post(at("board-edit"), {"base": 1, "do": "sets", "by": "1", **SQUAT})
    as_coach.post(at("board-edit"), {"base": 2, "do": "sets", "by": "1", **SQUAT})
    for step in ("board-undo", "board-redo"):
        assert as_coach.post(at(step), {"base": 2}).status_code == 409
        assert as_coach.post(at(step), {}).status_code == 409
    week.refresh_from_db()
    assert week.current.number == 3


def test_an_edit_on_what_was_undone_meanwhile_is_told(as_coach, week, at) -> None:
    as_coach.post(at("board-edit"), {"base": 1, "do": "sets", "by": "1", **SQUAT})
    as_coach.post(at("board-undo"), {"base": 2})
    answer = as_coach.post(at("board-edit"), {"base": 2, "do": "remove", **CURL})
    assert answer.status_code == 409 and b"taken back" in answer.content
    week.refresh_from_db()
    assert week.current.number == 1 and week.versions.count() == 3


def test_compare_shows_lines_and_figures(as_coach, week, at) -> None:
    as_coach.post(at("board-edit"), {"base": 1, "do": "move", "to": "1.0", **SQUAT})
    as_coach.post(at("board-edit"), {"base": 2, "do": "remove", **CURL, "at": "1.2"})
    text = as_coach.get(at("board-compare") + "?a=1&b=3").content.decode()
    for words in ("moved", "taken out", "Dumbbell curl", "version 1", "version 3", "no difference"):
        assert words in text
    assert as_coach.get(at("board-compare") + "?a=1&b=9").status_code == 404
    assert as_coach.get(at("board-compare")).status_code == 404


def test_an_earlier_version_comes_back_as_a_new_one(as_coach, week, at) -> None:
    first = week.current.text
    as_coach.post(at("board-edit"), {"base": 1, "do": "remove", **CURL})
    listed = as_coach.get(at("board-versions")).content.decode()
    assert "Dumbbell curl taken out" in listed and "on the board" in listed
    as_coach.post(at("board-put-back"), {"version": 1})
    week.refresh_from_db()
    assert (week.current.number, week.current.what) == (3, "as in version 1")
    assert plan_of(week.current.text) == plan_of(first)
