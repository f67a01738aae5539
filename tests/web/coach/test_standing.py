"""What needs the coach, in which order, in which words."""

from datetime import datetime, timedelta

import pytest

from setwright.web import trail
from setwright.web.coach import next_week
from setwright.web.coach.content import content_of
from setwright.web.coach.next_week import Answer
from setwright.web.coach.reviewed import review_of
from setwright.web.coach.roster_rows import LOOKED_AT, arounds, rows, standing_of
from setwright.web.engine.folder import folder_of, intake_text
from setwright.web.models import Client, IntakeVersion, Week

from .conftest import LAST, THIS, TODAY, week

AT = datetime(2026, 11, 25, 9)


def words(client: Client) -> list[str]:
    around = arounds([client], TODAY)[client.uuid]
    return [one.words for one in standing_of(client, content_of(client), around, TODAY).needs]


def look(client: Client, monday) -> None:
    trail.note(client.coach, client, "saw", f"{LOOKED_AT}{monday}")


def decline_all(client: Client) -> None:
    """Every proposal of last week declined."""
    content, folder = content_of(client), folder_of(client)
    for one in review_of(folder, content, LAST, TODAY).proposals:
        content = content_of(client)
        found = review_of(folder_of(client), content, LAST, TODAY)
        next_week.decide(client, found, content, Answer(one.id, "decline", {}), client.coach, AT)


def send_this_week(client: Client) -> None:
    week(client, THIS, client.weeks.get().sent.text)


def test_nothing_is_set_up_for_a_new_client(practice, coach) -> None:
    new = Client.objects.create(organisation=practice, coach=coach, name="Pia")
    assert words(new) == ["No intake yet."]
    text = "setwright: intake/1\nname: Pia\nexperience: beginner\nage_band: 18-39\n"
    text += "screening: {active_last_3_months: yes}\ndays: [monday 60 min]\ngym: full gym\n"
    IntakeVersion.objects.create(client=new, number=1, text=text)
    assert words(new) == ["No plan yet.", "Not invited to the phone yet."]
    week(new, THIS, sent=False)
    assert words(new)[0] == "The first week is a draft, not sent yet."


def test_a_client_for_whom_all_is_done_needs_nothing(story) -> None:
    client = story.tell()
    decline_all(client)
    assert words(client) == [
        "The week of 16 November is unread.",
        "This week is not sent yet; the plan of before goes on.",
    ]
    look(client, LAST)
    send_this_week(client)
    assert words(client) == []


def test_a_stop_sign_stands_above_all_and_stays_after_a_look(story) -> None:
    story.symptom = (LAST, "lat-pulldown")
    story.pain = {(LAST, "barbell-bench-press"): 6}
    client = story.tell()
    first = "Stop sign reported: dizziness. A licensed professional first."
    assert words(client)[0] == first
    look(client, LAST)
    assert words(client)[0] == first
    text = intake_text(client).replace(
        "active_last_3_months: yes", f"active_last_3_months: yes, cleared_on: {TODAY}"
    )
    IntakeVersion.objects.create(client=client, number=2, text=text)
    assert first not in words(client)


def test_pain_is_told_until_the_coach_has_looked(story) -> None:
    story.pain = {(THIS, "barbell-bench-press"): 6, (THIS, "lat-pulldown"): 2}
    client = story.tell()
    found = words(client)
    assert found[0] == "Pain reported: Barbell bench press (left shoulder 6 of 10)."
    assert "Pain reported: Lat pulldown (left shoulder 2 of 10)." in found
    look(client, THIS)
    assert not [one for one in words(client) if one.startswith("Pain")]


def test_proposals_wait_until_they_are_decided(hurting) -> None:
    waiting = [one for one in words(hurting) if "proposal" in one]
    assert waiting == [
        "2 proposals wait in the unread week of 16 November: Leave out Barbell bench press, which "
        "hurts, and 1 more."
    ]
    look(hurting, LAST)
    assert any("2 proposals wait in the week of 16 November" in one for one in words(hurting))
    # What hurts stays at the top until it is decided.
    assert rows([hurting], TODAY)[0].group == "now"
    decline_all(hurting)
    assert not [one for one in words(hurting) if "proposal" in one]
    assert rows([hurting], TODAY)[0].group == "decide"


def test_missed_sessions_are_counted_with_their_days_and_reasons(story) -> None:
    story.missed = {(LAST, "Lower"), (THIS, "Upper")}
    client = story.tell()
    missed = "2 sessions missed: Thu 19 November and Mon 23 November (no time)."
    assert missed in words(client)
    look(client, LAST)
    assert not [one for one in words(client) if "missed" in one]


def test_a_clearance_note_is_asked_for(person) -> None:
    text = intake_text(person).replace("{active", "{pregnant: yes, active")
    IntakeVersion.objects.create(client=person, number=2, text=text)
    asked = "The screening (pregnancy) asks for a clearance note of a licensed professional"
    assert words(person)[0].startswith(asked)
    text = text.replace("{pregnant", "{clearance: yes, pregnant")
    IntakeVersion.objects.create(client=person, number=3, text=text)
    assert not [one for one in words(person) if "clearance note" in one]


def test_a_week_changed_after_it_went_out_is_told(story) -> None:
    client = story.tell()
    decline_all(client)
    look(client, LAST)
    send_this_week(client)
    now = Week.objects.get(client=client, starts=THIS)
    now.current = now.versions.create(number=2, text=now.current.text, what="edited")
    now.save()
    assert words(client) == ["The week of 23 November was changed since it was sent."]


def test_the_roster_is_in_order_of_urgency(practice, coach, story) -> None:
    story.symptom = (LAST, "lat-pulldown")
    ill = story.tell()
    new = Client.objects.create(organisation=practice, coach=coach, name="Aron")
    found = rows([new, ill], TODAY)
    assert [row.client.name for row in found] == ["Oda", "Aron"]
    assert [row.group for row in found] == ["now", "set up"]


def test_without_time_who_hurts_is_computed_first_and_told_before(practice, coach, story) -> None:
    story.pain = {(THIS, "lat-pulldown"): 3}
    sore = story.tell()
    others = [Client.objects.create(organisation=practice, coach=coach, name=name) for name in "AB"]
    found = {row.client.name: row for row in rows([*others, sore], TODAY, budget_s=0.0)}
    assert found["Oda"].standing is not None
    assert found["A"].standing is None and found["B"].standing is None
    again = {row.client.name: row for row in rows([*others, sore], TODAY, budget_s=0.0)}
    assert again["A"].standing is not None and again["B"].standing is None


@pytest.mark.parametrize("change", ["log", "week", "intake", "decision", "day", "look"])
def test_a_standing_is_computed_anew_when_what_it_stands_on_changes(hurting, change) -> None:
    before = content_of(hurting), arounds([hurting], TODAY)[hurting.uuid]
    day = TODAY
    if change == "log":
        hurting.log.create(record_id="x", at="2026-11-25", text="{}")
    elif change == "week":
        week(hurting, THIS + timedelta(7), sent=False)
    elif change == "intake":
        IntakeVersion.objects.create(client=hurting, number=2, text=intake_text(hurting))
    elif change == "decision":
        hurting.decisions.create(decision_id="x", text="{}")
    elif change == "look":
        look(hurting, LAST)
    else:
        day += timedelta(1)
    after = content_of(hurting), arounds([hurting], day)[hurting.uuid]
    assert (*after, day) != (*before, TODAY)
