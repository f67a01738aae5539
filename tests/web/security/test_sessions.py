"""Signing in, staying in, getting out: what protects a session and a form."""

import pytest
from django.contrib.auth.hashers import identify_hasher, make_password
from django.contrib.sessions.models import Session
from django.test import Client as Browser
from django.test import override_settings

from setwright.web import settings as real

PASSWORD = "a long enough pass phrase"


def sign_in(browser, account, password=PASSWORD, **more):
    return browser.post("/sign-in", {"email": account.email, "password": password}, **more)


def test_a_session_gets_a_new_key_at_sign_in_and_its_old_one_is_worthless(client, coach):
    client.get("/sign-in")
    session = client.session
    session["planted"] = "by somebody"
    session.save()
    client.cookies["sessionid"] = before = session.session_key
    sign_in(client, coach)
    assert client.cookies["sessionid"].value != before
    assert not Session.objects.filter(session_key=before).exists()


def test_signing_out_ends_the_session_for_whoever_has_its_cookie(client, coach):
    sign_in(client, coach)
    stolen = client.cookies["sessionid"].value
    client.post("/sign-out")
    thief = Browser()
    thief.cookies["sessionid"] = stolen
    assert thief.get("/clients").status_code == 302
    assert not Session.objects.exists()


def test_a_new_password_ends_every_other_session(client, coach):
    other = Browser()
    sign_in(client, coach)
    sign_in(other, coach)
    new = "an altogether different phrase"
    assert client.post("/password", {"old": PASSWORD, "new": new}).status_code == 302
    assert client.get("/clients").status_code == 200
    assert other.get("/clients").status_code == 302
    assert sign_in(Browser(), coach).status_code == 422
    assert sign_in(Browser(), coach, new).status_code == 302


@pytest.mark.parametrize(
    ("old", "new"), [("wrong", "an altogether different phrase"), (PASSWORD, "short")]
)
def test_a_password_changes_only_by_the_old_one_and_to_a_good_one(as_coach, coach, old, new):
    assert as_coach.post("/password", {"old": old, "new": new}).status_code == 422
    coach.refresh_from_db()
    assert coach.check_password(PASSWORD)


def test_a_form_without_its_token_is_refused(coach):
    browser = Browser(enforce_csrf_checks=True)
    assert sign_in(browser, coach).status_code == 403
    browser.force_login(coach)
    assert browser.post("/clients/add", {"name": "X"}).status_code == 403
    assert browser.post("/sign-out").status_code == 403
    page = browser.get("/clients")
    token = page.context["csrf_token"]
    good = browser.post("/clients/add", {"name": "X", "csrfmiddlewaretoken": str(token)})
    assert good.status_code in (200, 302)


def test_guessing_a_password_stops_after_ten_tries(client, coach):
    for _ in range(10):
        assert sign_in(client, coach, "wrong").status_code == 422
    assert "Too many attempts" in sign_in(client, coach).content.decode()
    assert "_auth_user_id" not in client.session


def test_guessing_at_many_accounts_from_one_place_stops_too(client, db):
    for number in range(50):
        client.post("/sign-in", {"email": f"{number}@example.org", "password": "x"})
    answer = client.post("/sign-in", {"email": "new@example.org", "password": "x"})
    assert "Too many attempts" in answer.content.decode()


def test_guessing_at_invitations_stops(client, db):
    statuses = {client.get(f"/team/join/{number}").status_code for number in range(10)}
    assert statuses == {404}
    assert client.get("/team/join/again").status_code == 429


def test_nobody_is_sent_to_another_site_after_signing_in(client, coach):
    answer = sign_in(client, coach, query_params={"next": "https://elsewhere.example/"})
    assert answer["Location"] == "/"
    client.logout()
    answer = client.post(
        "/sign-in", {"email": coach.email, "password": PASSWORD, "next": "//elsewhere.example"}
    )
    assert answer["Location"] == "/"


def test_passwords_are_kept_with_argon2():
    with override_settings(PASSWORD_HASHERS=real.PASSWORD_HASHERS):
        assert identify_hasher(make_password("x" * 12)).algorithm == "argon2"


def test_cookies_are_out_of_reach_of_scripts_and_other_sites(client, coach):
    sign_in(client, coach)
    for name in ("sessionid", "csrftoken"):
        assert client.cookies[name]["httponly"]
        assert client.cookies[name]["samesite"] == "Lax"
