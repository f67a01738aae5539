"""Coaches come by invitation, clients move between them, and a closed way in is closed."""

import re

import pytest
from django.test import Client as Browser

from setwright.web.api.tokens import account_of, make_token
from setwright.web.models import Account, Invitation, Organisation
from setwright.web.views.team import MOST_INVITATIONS

NEW = {"name": "Signe", "email": "Signe@example.org", "password": "rowing past the lighthouse"}


@pytest.fixture
def as_owner(owner):
    browser = Browser()
    browser.force_login(owner)
    return browser


@pytest.fixture
def address(as_owner):
    page = as_owner.post("/team/invite").content.decode()
    return re.search(r'value="http://testserver(/team/join/[^"]+)"', page)[1]


def test_an_invited_coach_joins_and_is_signed_in(client, address, practice):
    assert "Tidewater Hall" in client.get(address).content.decode()
    assert client.post(address, NEW)["Location"] == "/clients"
    made = Account.objects.get(email="signe@example.org")
    assert (made.role, made.organisation) == ("coach", practice)
    assert client.get("/clients").status_code == 200


def test_an_invitation_works_once(client, address):
    client.post(address, NEW)
    again = Browser().post(address, NEW | {"email": "second@example.org"})
    assert again.status_code == 404
    assert Account.objects.filter(role="coach").count() == 1


def test_an_invitation_taken_back_does_not_work(as_owner, client, address):
    as_owner.post(f"/team/invitations/{Invitation.objects.get().pk}/withdraw")
    assert client.get(address).status_code == 404


def test_so_many_invitations_are_made_at_once_and_no_more(as_owner):
    answers = [as_owner.post("/team/invite") for _ in range(MOST_INVITATIONS + 1)]
    assert [one.status_code for one in answers] == [200] * MOST_INVITATIONS + [429]
    assert "Too many invitations: no link was made." in answers[-1].content.decode()
    assert Invitation.objects.count() == MOST_INVITATIONS


@pytest.mark.parametrize("wrong", [{"password": "short"}, {"email": "no"}, {"name": ""}])
def test_a_refused_form_leaves_the_invitation_open(client, address, wrong):
    assert client.post(address, NEW | wrong).status_code == 422
    assert client.post(address, NEW).status_code == 302


def test_a_clients_invitation_makes_no_coach_and_a_coachs_no_client(client, address, person, coach):
    from setwright.web.phone.invitations import invite_client

    token = invite_client(person, coach, False)[0]
    assert client.post(f"/team/join/{token}", NEW).status_code == 404
    assert client.post(f"/join/{address.rpartition('/')[2]}").status_code == 404
    assert not Account.objects.filter(email="signe@example.org").exists()


def test_only_the_hash_of_an_invitation_is_kept(address):
    assert address.rpartition("/")[2] not in str(Invitation.objects.values().get())


def test_a_moved_client_is_the_new_coachs_alone(as_owner, as_coach, person, other_coach):
    as_owner.post("/team/move", {"client": person.uuid, "coach": other_coach.pk})
    person.refresh_from_db()
    assert person.coach == other_coach
    assert as_coach.get(f"/clients/{person.uuid}").status_code == 404


def test_a_client_cannot_be_moved_out_of_the_organisation(as_owner, person, coach):
    elsewhere = Organisation.objects.create(name="Quarry Hall")
    stranger = Account.objects.create(
        organisation=elsewhere, role="coach", name="Kit", email="kit@example.org", password="x" * 14
    )
    sent = {"client": person.uuid, "coach": stranger.pk}
    assert as_owner.post("/team/move", sent).status_code == 422
    person.refresh_from_db()
    assert person.coach == coach


def test_a_coach_let_go_is_out_at_once_by_session_token_and_password(as_owner, other_coach):
    browser = Browser()
    browser.force_login(other_coach)
    token = make_token(other_coach, "x")
    as_owner.post(f"/team/{other_coach.uuid}/let-go")
    assert browser.get("/clients").status_code == 302
    sent = {"email": other_coach.email, "password": "a long enough pass phrase"}
    assert Browser().post("/sign-in", sent).status_code == 422
    from django.utils import timezone

    assert account_of(token, timezone.now()) is None
    as_owner.post(f"/team/{other_coach.uuid}/take-back")
    assert Browser().post("/sign-in", sent).status_code == 302
    assert account_of(token, timezone.now()) is None


def test_a_coach_with_clients_is_not_let_go(as_owner, person, coach):
    as_owner.post(f"/team/{coach.uuid}/let-go")
    coach.refresh_from_db()
    assert coach.is_active
