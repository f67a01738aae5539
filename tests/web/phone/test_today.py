"""The page of the day, its plain forms, and its document."""

from django.urls import reverse

from setwright.web.models import TrailEntry


def send(phone, records, person=None):
    body = {"person": str(person), "records": records}
    return phone.post(reverse("sync"), body, content_type="application/json")


def test_the_session_of_today_is_shown_with_loads(phone) -> None:
    answer = phone.get(reverse("today"))
    page = answer.content.decode()
    assert answer.status_code == 200
    assert "Barbell bench press" in page and "Last time" in page and "Warm-up first" in page
    assert TrailEntry.objects.filter(what="saw", detail="today").exists()
