"""The link that lets a client in: once, for a week, and nobody else."""

from datetime import timedelta

import pytest
from django.test import Client as Browser
from django.urls import reverse
from django.utils import timezone

from setwright.web.models import Account, Client, Invitation, TrailEntry
from setwright.web.phone.invitations import VALID, invite_client
from setwright.web.security.tokens import hash_of, new_token
from setwright.web.views.phone_join import MOST_INVITATIONS


@pytest.fixture
def newcomer(practice, coach):
    return Client.objects.create(organisation=practice, coach=coach, name="Pell")


def link(token: str) -> str:
    return reverse("join", args=[token])


def test_a_link_lets_in_once(newcomer, coach, client) -> None:
    token, _ = invite_client(newcomer, coach, False)
    assert b"Join on this phone" in client.get(link(token)).content
    joined = client.post(link(token))
    assert joined.headers["Location"] == f"{reverse('today')}?joined=1"
    newcomer.refresh_from_db()
    assert newcomer.account.role == "client" and not newcomer.account.has_usable_password()
    assert client.get(reverse("today")).status_code == 200
    assert Browser().post(link(token)).status_code == 404
    assert TrailEntry.objects.filter(client=str(newcomer.uuid), what="joined").count() == 1


def test_a_preview_does_not_use_it_up(newcomer, coach, client) -> None:
    token, _ = invite_client(newcomer, coach, False)
    for ask in (client.get, client.head, client.get):
        assert ask(link(token)).status_code == 200
    assert Invitation.objects.get().used_at is None
    assert client.post(link(token)).status_code == 302


def test_only_the_hash_is_kept(newcomer, coach) -> None:
    token, _ = invite_client(newcomer, coach, False)
    assert Invitation.objects.get().token_hash == hash_of(token) != token


def test_it_expires(newcomer, coach, client) -> None:
    token, expires_at = invite_client(newcomer, coach, False)
    assert abs(expires_at - timezone.now() - VALID) < timedelta(minutes=1)
    Invitation.objects.update(expires_at=timezone.now() - timedelta(seconds=1))
    assert client.get(link(token)).status_code == client.post(link(token)).status_code == 404


def test_a_newer_link_takes_its_place(newcomer, coach, client) -> None:
    old, _ = invite_client(newcomer, coach, False)
    new, _ = invite_client(newcomer, coach, False)
    assert client.post(link(old)).status_code == 404
    assert client.post(link(new)).status_code == 302


def test_somebody_archived_does_not_come_in(newcomer, coach, client) -> None:
    token, _ = invite_client(newcomer, coach, False)
    Client.objects.update(archived_at=timezone.now())
    assert client.post(link(token)).status_code == 404


def test_a_coachs_invitation_is_another_thing(practice, owner, client) -> None:
    token = new_token()
    Invitation.objects.create(
        organisation=practice,
        token_hash=hash_of(token),
        made_by=owner,
        expires_at=timezone.now() + VALID,
    )
    assert client.post(link(token)).status_code == 404


def test_guessing_is_stopped(newcomer, coach, client) -> None:
    for _ in range(10):
        assert client.get(link("guess")).status_code == 404
    assert client.get(link("guess")).status_code == 429
    token, _ = invite_client(newcomer, coach, False)
    assert client.get(link(token)).status_code == 200
    assert client.post(link(token)).status_code == 429


def test_another_phone_is_added(person, coach) -> None:
    phones = [Browser(), Browser()]
    for phone in phones:
        token, _ = invite_client(person, coach, False)
        phone.post(link(token))
    assert [phone.get(reverse("today")).status_code for phone in phones] == [200, 200]
    assert Account.objects.filter(role="client").count() == 1


def test_a_lost_phone_is_signed_out(person, coach) -> None:
    lost, new = Browser(), Browser()
    lost.post(link(invite_client(person, coach, False)[0]))
    assert lost.get(reverse("today")).status_code == 200
    token, _ = invite_client(person, coach, True)
    assert lost.get(reverse("today")).status_code == 302
    new.post(link(token))
    assert new.get(reverse("today")).status_code == 200


def test_the_coach_sees_the_link_once(as_coach, person) -> None:
    answer = as_coach.post(reverse("invite", args=[person.uuid]))
    page = answer.content.decode()
    token = page.split("/join/")[1].split('"')[0]
    assert hash_of(token) == Invitation.objects.get().token_hash
    assert "no-store" in answer.headers["Cache-Control"]
    assert TrailEntry.objects.filter(what="invited").exists()


def test_looking_makes_no_link(as_coach, person) -> None:
    page = as_coach.get(reverse("invite", args=[person.uuid])).content.decode()
    assert "Make the link" in page and "lost or changed hands" in page
    assert not Invitation.objects.exists()


def test_only_ones_own_coach_invites(client, other_coach, person) -> None:
    client.force_login(other_coach)
    assert client.post(reverse("invite", args=[person.uuid])).status_code == 404
    client.force_login(person.account)
    assert client.post(reverse("invite", args=[person.uuid])).status_code == 404
    assert not Invitation.objects.exists()


def test_a_coach_makes_so_many_links_and_no_more_at_once(newcomer, coach, client) -> None:
    client.force_login(coach)
    address = reverse("invite", args=[newcomer.uuid])
    answers = [client.post(address) for _ in range(MOST_INVITATIONS + 1)]
    assert [one.status_code for one in answers] == [200] * MOST_INVITATIONS + [429]
    assert b"Too many invitations" in answers[-1].content
    assert Invitation.objects.count() == MOST_INVITATIONS
