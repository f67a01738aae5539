"""Sets that two phones entered: the review shows them, and the coach strikes one."""

from datetime import datetime, timedelta
from uuid import uuid4

import pytest
from django.urls import reverse

from setwright.plan.log import SetRecord
from setwright.web.coach.content import content_of
from setwright.web.coach.reviewed import review_of
from setwright.web.engine.append import append_records
from setwright.web.engine.folder import folder_of
from setwright.web.models import TrailEntry

from .conftest import LAST, TODAY

AT = datetime(LAST.year, LAST.month, LAST.day, 18, 40)


@pytest.fixture
def doubled(story):
    """Oda, and two records of one set."""
    client = story.tell()
    sets = [
        SetRecord(
            id=str(uuid4()),
            at=AT + timedelta(minutes=minute),
            exercise="barbell-bench-press",
            load_kg=62.5,
            reps=8 - minute,
            rir=2,
            number=4,
        )
        for minute in (0, 1)
    ]
    append_records(client, sets, None)
    return client, [one.id for one in sets]


def shown(as_coach, client):
    return as_coach.get(reverse("review", args=[client.uuid]), {"week": LAST.isoformat()})


def strike(as_coach, client, record):
    return as_coach.post(
        reverse("review-strike", args=[client.uuid, LAST]), {"record": record}, follow=True
    )


def counted(client) -> int:
    facts = review_of(folder_of(client), content_of(client), LAST, TODAY).facts
    return sum(one.done_sets for one in facts.sessions)


def test_both_are_shown_with_what_was_done(as_coach, doubled):
    text = shown(as_coach, doubled[0]).content.decode()
    assert "Mon 18:40, set 4: Barbell bench press 62.5 kg x 8, RIR 2" in text
    assert "Mon 18:41, set 4: Barbell bench press 62.5 kg x 7, RIR 2" in text


def test_the_one_that_is_struck_does_not_count_and_stays_in_the_log(as_coach, doubled):
    client, (first, second) = doubled
    before = counted(client)
    page = strike(as_coach, client, second).content.decode()
    assert "Struck: Barbell bench press, set 4 of Monday at 18:41." in page
    assert "Entered twice" not in page
    log = folder_of(client).log
    assert first in log.standing_ids() and second not in log.standing_ids()
    assert second in log.ids
    assert counted(client) == before - 1
    assert TrailEntry.objects.filter(what="struck", client=str(client.uuid)).count() == 1


def test_the_last_one_of_a_number_cannot_be_struck(as_coach, doubled):
    client, (first, second) = doubled
    strike(as_coach, client, first)
    for record in (first, second, "", "a set of mine"):
        page = strike(as_coach, client, record).content.decode()
        assert "That set stands in the log once by now. Nothing was struck." in page
    assert second in folder_of(client).log.standing_ids()
