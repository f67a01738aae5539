"""Files of a week, for the coach and for the client's own."""

import io
import zipfile
from datetime import date

import pytest

STARTS = {"pdf": b"%PDF-", "xlsx": b"PK", "ics": b"BEGIN:VCALENDAR", "html": b"<!DOCTYPE html>"}


def address(week, kind, reader=""):
    return f"/clients/{week.client.uuid}/weeks/{week.starts}/handout.{kind}{reader}"


@pytest.mark.parametrize("kind", STARTS)
def test_every_file_downloads(as_coach, week, kind):
    answer = as_coach.get(address(week, kind))
    assert answer.content.startswith(STARTS[kind])
    assert f'filename="a-week-for-oona-2026-09-07.{kind}"' in answer["Content-Disposition"]


def test_the_coachs_page_has_the_audit_and_the_clients_has_not(as_coach, week):
    coach = as_coach.get(address(week, "html", "?for=coach")).content.decode()
    client = as_coach.get(address(week, "html")).content.decode()
    assert "For the coach" in coach
    assert "For the coach" not in client


def test_the_week_is_explained_in_short_and_in_full(as_coach, week):
    start = address(week, "html").replace("handout", "explained")
    short, full = (as_coach.get(start + depth).content.decode() for depth in ("", "?depth=full"))
    assert "Why this week is as it is" in short
    assert len(full) > 2 * len(short)
    assert as_coach.get(start.replace("html", "pdf")).content.startswith(b"%PDF-")


@pytest.mark.parametrize(
    "what",
    ["handout.exe", "handout.pdf?for=everybody", "explained.xlsx", "explained.pdf?depth=deep"],
)
def test_what_is_not_offered_is_not_there(as_coach, week, what):
    start = address(week, "pdf").removesuffix("handout.pdf")
    assert as_coach.get(start + what).status_code == 404


def test_the_client_gets_the_week_in_force_and_no_draft(client, week, draft, person, monkeypatch):
    from setwright.web.views import handouts

    monkeypatch.setattr(handouts, "today", lambda: date(2026, 9, 16))
    client.force_login(person.account)
    page = client.get("/today/handout.html").content.decode()
    assert "A week for" in page
    assert "Another week for" not in page


def test_a_client_without_a_week_has_no_file(client, person):
    client.force_login(person.account)
    assert client.get("/today/handout.pdf").status_code == 404


def test_the_workbook_is_a_whole_zip(as_coach, week):
    content = as_coach.get(address(week, "xlsx")).content
    assert zipfile.ZipFile(io.BytesIO(content)).testzip() is None
