"""First start, sign-in, and pages that open for nobody else."""

import pytest
from django.urls import reverse

from setwright.web.models import Account
from setwright.web.server.start_code import start_code

OWNER = {
    "organisation": "Tidewater Hall",
    "name": "Runa",
    "email": "runa@example.org",
    "password": "nine slow kettles",
}


@pytest.mark.django_db
def test_the_first_account_needs_the_code_of_the_server(client) -> None:
    assert client.get("/").headers["Location"] == reverse("start")
    wrong = client.post(reverse("start"), {**OWNER, "code": "0000-0000-0000"})
    assert wrong.status_code == 422 and not Account.objects.exists()
    right = client.post(reverse("start"), {**OWNER, "code": start_code()})
    assert right.headers["Location"] == reverse("roster")
    assert Account.objects.get().role == "owner"
    assert client.get(reverse("roster")).status_code == 200
    assert client.get(reverse("start")).status_code == 404


def test_signing_in_and_out(client, coach) -> None:
    wrong = client.post(reverse("sign-in"), {"email": coach.email, "password": "x"})
    assert wrong.status_code == 422
    right = client.post(
        reverse("sign-in"), {"email": coach.email.upper(), "password": "a long enough pass phrase"}
    )
    assert right.status_code == 302
    assert client.get(reverse("roster")).status_code == 200
    client.post(reverse("sign-out"))
    assert client.get(reverse("roster")).headers["Location"].startswith(reverse("sign-in"))


def test_a_sign_in_leads_nowhere_else(client, coach) -> None:
    data = {
        "email": coach.email,
        "password": "a long enough pass phrase",
        "next": "https://elsewhere.example/",
    }
    assert client.post(reverse("sign-in"), data).headers["Location"] == reverse("home")


def test_guessing_a_password_is_stopped(client, coach) -> None:
    for _ in range(10):
        client.post(reverse("sign-in"), {"email": coach.email, "password": "guess"})
    right = {"email": coach.email, "password": "a long enough pass phrase"}
    answer = client.post(reverse("sign-in"), right)
    assert answer.status_code == 422 and b"Too many attempts" in answer.content


def test_every_page_is_kept_to_itself(client, db) -> None:
    policy = client.get(reverse("sign-in")).headers["Content-Security-Policy"]
    assert "default-src 'none'" in policy and "unsafe" not in policy


def test_a_client_sees_nothing_of_the_coach(client, person) -> None:
    client.force_login(person.account)
    assert client.get(reverse("roster")).status_code == 404


def test_health(client, db) -> None:
    assert client.get(reverse("health")).json()["status"] == "ok"
