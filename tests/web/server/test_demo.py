"""The demo: people at different states, every day of the week."""

from datetime import date, timedelta

import pytest

from setwright.documents.errors import DocumentError
from setwright.plan.limits import clearance
from setwright.training.review import review, week_to_review
from setwright.web.demo.fill import fill
from setwright.web.demo.open import open_demo, password
from setwright.web.engine.folder import folder_of
from setwright.web.models import Account, Client, LogEntry

MONDAY = date(2026, 11, 23)


def named(name):
    return Client.objects.get(name=name)


def reviewed(name, today):
    folder = folder_of(named(name))
    return review(folder, week_to_review(folder, today), today)


@pytest.mark.django_db
@pytest.mark.parametrize("today", [MONDAY, MONDAY + timedelta(6)])
def test_every_client_stands_where_the_demo_says(today):
    fill(today)
    assert Client.objects.count() == 13
    assert folder_of(named("Eskil")) is None
    assert clearance(folder_of(named("Gerda")).intake) is not None
    assert not named("Kwame").weeks.filter(sent__isnull=False).exists()
    assert named("Yusra").archived_at is not None
    assert max(LogEntry.objects.values_list("at", flat=True))[:10] < today.isoformat()
    kinds = {one: {p.kind for p in reviewed(one, today).proposals} for one in ("Ebbe", "Leila")}
    assert "ask a professional" in kinds["Ebbe"]
    assert kinds["Leila"]
    for name in ("Tove", "Mateo", "Tomas", "Sanna"):
        assert reviewed(name, today).proposals, name
    last = folder_of(named("Noor")).log.records[-2:]
    assert [one.kind for one in last] == ["missed", "missed"]


@pytest.mark.django_db
def test_the_one_decided_has_this_week_from_the_review():
    fill(MONDAY)
    found = review(folder_of(named("Ines")), MONDAY - timedelta(7))
    assert found.proposals
    assert len(found.decided) == len(found.proposals)
    assert named("Ines").weeks.filter(starts=MONDAY, sent__isnull=False).exists()


@pytest.mark.django_db
def test_opening_it_again_signs_in_the_same_and_fills_nothing_more():
    first, again = open_demo(MONDAY), open_demo(MONDAY)
    assert password() in first
    assert password() in again
    assert Client.objects.count() == 13
    assert Account.objects.get(role="owner").check_password(password())


@pytest.mark.django_db
def test_a_workspace_in_use_is_left_alone(coach):
    with pytest.raises(DocumentError, match="in use"):
        open_demo(MONDAY)
    assert not Client.objects.exists()
