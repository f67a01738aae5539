"""The week in review, proposals decided, and the next week going out."""

import json
from datetime import timedelta

import pytest
from django.urls import reverse

from setwright.plan.client_folder import open_folder
from setwright.plan.decision import Decision
from setwright.training.decisions import decide as decide_by_command
from setwright.training.decisions import pick
from setwright.training.review import review
from setwright.web.coach.content import content_of
from setwright.web.coach.documents import document, paths
from setwright.web.engine.folder import folder_of, plan_of
from setwright.web.models import TrailEntry, Week

from .conftest import LAST, NOW, THIS, TODAY, week

PAIN = "Leave out Barbell bench press, which hurts"


def address(client, name="review", **words):
    return reverse(name, kwargs={"client": client.uuid, **words})


def proposals(client):
    return review(folder_of(client), LAST, TODAY).proposals


def of_kind(client, kind):
    return next(one for one in proposals(client) if one.kind == kind)


def decide(as_coach, client, **said):
    return as_coach.post(address(client, "review-decide", monday=LAST), said)


def test_the_page_shows_what_the_printed_review_shows(as_coach, hurting) -> None:
    page = as_coach.get(address(hurting))
    text = page.content.decode()
    assert page.status_code == 200
    for words in ("16 November to 22 November 2026", "Upper", "9 of 9", PAIN,
                  "left shoulder 6 of 10 (stop and exchange)", "If declined:"):  # fmt: skip
        assert words in text
    assert page.context["page"].kept.startswith("100% of the sets planned")
    assert len(page.context["cards"]) == len(proposals(hurting))
    assert TrailEntry.objects.filter(what="saw", detail=f"review {LAST}").exists()


def test_pain_reported_after_the_week_is_not_left_to_its_own_review(as_coach, story) -> None:
    story.pain = {(THIS, "lat-pulldown"): 7}
    client = story.tell()
    page = as_coach.get(address(client))
    assert [one.words for one in page.context["since"]] == [
        "Pain reported: Lat pulldown (left shoulder 7 of 10)."
    ]
    assert as_coach.get(f"{address(client)}?week={THIS}").context["since"] == ()


def test_a_stop_sign_comes_with_what_to_do(as_coach, story) -> None:
    story.symptom = (LAST, "lat-pulldown")
    text = as_coach.get(address(story.tell())).content.decode()
    assert "Stop sign reported: dizziness" in text
    assert "ask a licensed professional before the next session" in text
    assert "Reported since that week" not in text


def test_accepting_makes_next_weeks_draft_and_keeps_the_decision(as_coach, hurting) -> None:
    one = of_kind(hurting, "exchange")
    answer = decide(as_coach, hurting, proposal=one.id, choice="accept", because="it hurts")
    assert answer.status_code == 302
    entry = hurting.decisions.get()
    kept = Decision.model_validate_json(entry.text)
    assert (kept.choice, kept.because, kept.proposal) == ("accept", "it hurts", one.id)
    made = Week.objects.get(client=hurting, starts=THIS)
    assert made.sent is None
    exercises = [e.exercise for s in plan_of(made.current.text).sessions for e in s.exercises]
    assert "barbell-bench-press" not in exercises and "lat-pulldown" in exercises
    page = as_coach.get(address(hurting))
    first = page.context["differs"][0]
    assert first.startswith("Less growth: pectoralis major") and first.endswith(".")
    assert "A draft: the client does not see it yet." in page.content.decode()
    assert "Accepted on Wednesday 25 November. it hurts" in page.content.decode()


def test_it_is_kept_as_the_command_line_keeps_it(as_coach, hurting, tmp_path) -> None:
    for path in paths(content_of(hurting)):
        file = tmp_path / path
        file.parent.mkdir(exist_ok=True)
        file.write_text(document(hurting, path))
    mine = review(open_folder(tmp_path), LAST, TODAY)
    assert [one.id for one in mine.proposals] == [one.id for one in proposals(hurting)]
    one = of_kind(hurting, "exchange")
    at = NOW.replace(tzinfo=None)
    done = decide_by_command(mine, pick(mine, one.id), "accept", at, because="it hurts")
    decide(as_coach, hurting, proposal=one.id, choice="accept", because="it hurts")
    written = json.loads((tmp_path / "decisions.jsonl").read_text())
    assert json.loads(hurting.decisions.get().text) == written
    assert plan_of(Week.objects.get(starts=THIS).current.text) == done.plan


def test_declining_changes_no_plan(as_coach, hurting) -> None:
    for one in proposals(hurting):
        decide(as_coach, hurting, proposal=one.id, choice="decline", because="not now")
    assert not Week.objects.filter(starts=THIS).exists()
    assert hurting.decisions.count() == len(proposals(hurting))


def test_an_edited_proposal_is_taken_as_edited(as_coach, hurting) -> None:
    one = of_kind(hurting, "exchange")
    said = {"proposal": one.id, "choice": "edit", "by": "machine chest press", "sets": "2"}
    assert decide(as_coach, hurting, **said).status_code == 302
    plan = plan_of(Week.objects.get(starts=THIS).current.text)
    found = {e.exercise: e.sets for e in plan.sessions[0].exercises}
    assert found["machine-chest-press"] == 2
    kept = Decision.model_validate_json(hurting.decisions.get().text)
    assert kept.choice == "edit" and kept.change["by"] == "machine-chest-press"


@pytest.mark.parametrize(
    ("said", "words"),
    [
        ({"by": "some press of mine"}, "Exercise instead: found"),
        ({"by": "dumbbell bench press", "sets": "many"}, "Sets: found"),
        ({"by": "dumbbell bench press", "sets": "40"}, "a whole number from 1 to 20"),
        ({}, "nothing changed"),
    ],
)
def test_an_edit_that_does_not_fit_says_so_and_keeps_what_was_typed(
    as_coach, hurting, said, words
) -> None:
    one = of_kind(hurting, "exchange")
    data = {"proposal": one.id, "choice": "edit", "because": "try it", **said}
    answer = decide(as_coach, hurting, **data)
    text = answer.content.decode()
    assert answer.status_code == 422
    assert words in text and 'value="try it"' in text
    assert all(f'value="{value}"' in text for value in said.values())
    assert not hurting.decisions.exists()


def test_a_decision_can_be_taken_anew_but_not_twice_by_accident(as_coach, hurting) -> None:
    one = of_kind(hurting, "exchange")
    decide(as_coach, hurting, proposal=one.id, choice="accept")
    again = decide(as_coach, hurting, proposal=one.id, choice="decline")
    assert again.status_code == 409 and "was changed meanwhile" in again.content.decode()
    assert hurting.decisions.count() == 1
    anew = decide(as_coach, hurting, proposal=one.id, choice="decline", instead="yes")
    assert anew.status_code == 302 and hurting.decisions.count() == 2
    plan = plan_of(Week.objects.get(starts=THIS).current.text)
    assert plan == folder_of(hurting).plan_on(LAST)


def test_a_decision_lands_on_the_draft_that_the_coach_made(as_coach, hurting) -> None:
    text = hurting.weeks.get().sent.text.replace("Lat pulldown: 3 x", "Lat pulldown: 5 x")
    week(hurting, THIS, text, sent=False)
    one = of_kind(hurting, "exchange")
    decide(as_coach, hurting, proposal=one.id, choice="accept")
    plan = plan_of(Week.objects.get(starts=THIS).current.text)
    assert {e.exercise: e.sets for e in plan.sessions[0].exercises} == {
        "lat-pulldown": 5,
        "dumbbell-curl": 3,
    }


def test_the_next_week_goes_out_as_it_stands_on_the_board(as_coach, hurting) -> None:
    one = of_kind(hurting, "exchange")
    decide(as_coach, hurting, proposal=one.id, choice="accept")
    send = address(hurting, "review-send", monday=LAST)
    assert as_coach.post(send, {"version": "7"}).status_code == 409
    assert as_coach.post(send, {"version": "1"}).status_code == 302
    made = Week.objects.get(starts=THIS)
    assert made.sent == made.current and made.sent_at == NOW
    assert dict(folder_of(hurting).plans)[THIS] == plan_of(made.current.text)
    assert "Out since 25 November" in as_coach.get(address(hurting)).content.decode()


def test_without_changes_the_plan_goes_on(as_coach, story) -> None:
    client = story.tell()
    send = address(client, "review-send", monday=LAST)
    assert as_coach.post(send, {"version": ""}).status_code == 302
    made = Week.objects.get(starts=THIS)
    assert plan_of(made.sent.text) == folder_of(client).plan_on(LAST)
    # Sent once more, nothing happens.
    as_coach.post(send, {"version": "1"})
    assert Week.objects.get(starts=THIS).versions.count() == 1


def test_what_is_long_over_is_no_more_decided(as_coach, hurting) -> None:
    old = LAST - timedelta(7)
    page = as_coach.get(f"{address(hurting)}?week={old}")
    assert page.context["monday"] == old and not page.context["may_decide"]
    url = address(hurting, "review-send", monday=old)
    assert as_coach.post(url, {"version": ""}).status_code == 422
    url = address(hurting, "review-decide", monday=old)
    assert as_coach.post(url, {"proposal": "x", "choice": "accept"}).status_code == 422
    ahead = address(hurting, "review-decide", monday=THIS + timedelta(7))
    assert as_coach.post(ahead, {}).status_code == 404


def test_a_script_gets_the_lower_part_alone(as_coach, hurting) -> None:
    one = of_kind(hurting, "exchange")
    url = address(hurting, "review-decide", monday=LAST)
    data = {"proposal": one.id, "choice": "accept"}
    answer = as_coach.post(url, data, headers={"HX-Request": "true"})
    text = answer.content.decode()
    assert answer.status_code == 200 and text.lstrip().startswith('<div id="decisions"')
    assert "<html" not in text and "autofocus" in text
    assert as_coach.post(url, data, headers={"HX-Request": "true"}).status_code == 409


def test_a_proposal_that_is_gone_is_said(as_coach, hurting) -> None:
    answer = decide(as_coach, hurting, proposal="deadbeef", choice="accept")
    assert answer.status_code == 422
    assert "That proposal is not there any more" in answer.content.decode()


def test_before_an_intake_there_is_nothing_to_review(as_coach, hurting) -> None:
    hurting.intakes.all().delete()
    assert "the intake comes first" in as_coach.get(address(hurting)).content.decode()


@pytest.mark.parametrize("asked", ["2026-11-18", "nonsense", "2999-01-01", "0000-00-00", ""])
def test_any_week_asked_for_gives_a_page(as_coach, hurting, asked) -> None:
    page = as_coach.get(f"{address(hurting)}?week={asked}")
    assert page.status_code == 200 and page.context["monday"] == LAST
