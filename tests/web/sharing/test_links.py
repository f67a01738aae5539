"""A read-only link to a week: what it shows, when it ends, and what it never shows."""

import re
from datetime import timedelta

import pytest
from django.utils import timezone

from setwright.web.models import ShareLink, TrailEntry
from setwright.web.sharing.links import make_link


def page_of(week):
    return f"/clients/{week.client.uuid}/weeks/{week.starts}/share"


@pytest.fixture
def token(week, coach):
    return make_link(week.current, coach, 14, timezone.now())


def test_a_link_made_on_the_page_opens_for_anybody(as_coach, week, client):
    answer = as_coach.post(f"{page_of(week)}/make", {"days": "3"})
    address = re.search(r'value="(http://testserver/s/[^"]+)"', answer.content.decode())[1]
    as_coach.logout()
    shown = client.get(address.removeprefix("http://testserver"))
    assert shown.status_code == 200
    assert "Monday" in shown.content.decode()
    assert ShareLink.objects.get().token_hash not in address


def test_what_a_link_shows_names_no_person_and_holds_no_intake(client, week, token):
    words = client.get(f"/s/{token}").content.decode()
    assert "A week of training" in words
    for never in (
        week.client.name,
        "Oona",
        "intermediate",
        "18-39",
        week.client.coach.name,
        str(week.client.uuid),
    ):
        assert never not in words


def test_a_link_is_kept_out_of_search_engines_and_caches(client, token):
    answer = client.get(f"/s/{token}")
    assert answer["X-Robots-Tag"] == "noindex, nofollow"
    assert "no-store" in answer["Cache-Control"]
    assert 'name="robots" content="noindex' in answer.content.decode()


def test_pictures_of_the_week_come_by_the_same_token_only(client, week, token):
    answer = client.get(f"/s/{token}/week-1.svg")
    assert answer["Content-Type"] == "image/svg+xml"
    assert b"<svg" in answer.content
    assert client.get(f"/s/{token}/week-99.svg").status_code == 404
    assert client.get("/s/another/week-1.svg").status_code == 404


def test_a_link_goes_on_showing_the_version_it_was_made_for(client, week, token):
    from setwright.web.models import PlanVersion

    later = PlanVersion.objects.create(
        week=week, number=2, text=week.current.text.replace("A week", "A changed week"), what="edit"
    )
    week.current = later
    week.save()
    assert "A changed week" not in client.get(f"/s/{token}").content.decode()


def test_a_link_ends_when_it_is_revoked(as_coach, week, token):
    link = ShareLink.objects.get()
    as_coach.post(f"{page_of(week)}/{link.uuid}/revoke")
    assert as_coach.get(f"/s/{token}").status_code == 404
    assert "ended on" in as_coach.get(page_of(week)).content.decode()


def test_a_link_ends_when_its_days_are_over(client, week, coach):
    old = make_link(week.current, coach, 1, timezone.now() - timedelta(days=2))
    assert client.get(f"/s/{old}").status_code == 404


def test_links_of_an_archived_client_do_not_open(client, week, token):
    week.client.archived_at = timezone.now()
    week.client.save()
    assert client.get(f"/s/{token}").status_code == 404


@pytest.mark.parametrize("days", ["0", "91", "", "many"])
def test_days_outside_1_to_90_are_refused(as_coach, week, days):
    answer = as_coach.post(f"{page_of(week)}/make", {"days": days})
    assert answer.status_code == 422
    assert not ShareLink.objects.exists()


def test_every_look_by_a_link_is_in_the_trail_without_health_data(client, week, token):
    client.get(f"/s/{token}")
    entry = TrailEntry.objects.get(who="share link")
    assert (entry.client, entry.what) == (str(week.client.uuid), "saw")


def test_another_coach_can_neither_see_nor_end_a_link(client, week, token, other_coach):
    client.force_login(other_coach)
    link = ShareLink.objects.get()
    assert client.get(page_of(week)).status_code == 404
    assert client.post(f"{page_of(week)}/{link.uuid}/revoke").status_code == 404
    assert ShareLink.objects.get().revoked_at is None
