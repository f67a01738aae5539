"""What an installed page needs: manifest, icons, worker, scripts of one version."""

import io
import re

import pytest
from django.urls import reverse
from PIL import Image

from setwright.web.assets import version
from setwright.web.phone.modules import modules


def test_the_manifest_opens_the_day_with_icons(client, db) -> None:
    found = client.get(reverse("phone-manifest")).json()
    assert found["start_url"] == found["scope"] == reverse("today")
    for one in found["icons"]:
        picture = Image.open(io.BytesIO(client.get(one["src"]).content))
        assert f"{picture.width}x{picture.height}" == one["sizes"]


def test_an_icon_of_another_size_is_not_drawn(client, db) -> None:
    assert client.get(reverse("phone-icon", args=[9999])).status_code == 404


def test_the_worker_keeps_everything_the_page_needs(client, db) -> None:
    answer = client.get(reverse("phone-worker"))
    assert answer.headers["Service-Worker-Allowed"] == reverse("today")
    kept = re.findall(r'^  "([^"]+)",$', answer.content.decode(), re.MULTILINE)
    assert {reverse("phone-module", args=[version(), name]) for name in modules()} <= set(kept)
    assert all(client.get(name).status_code == 200 for name in kept)


def test_scripts_import_only_scripts_that_are_there() -> None:
    for text in modules().values():
        for name in re.findall(r'from "\./([^"]+)\.js"', text.decode()):
            assert name in modules()


@pytest.mark.parametrize(("of_version", "kept"), [(version(), "immutable"), ("old", "no-store")])
def test_only_the_present_version_is_kept_for_long(client, db, of_version, kept) -> None:
    answer = client.get(reverse("phone-module", args=[of_version, "state"]))
    assert kept in answer.headers["Cache-Control"]
    assert answer.headers["Content-Type"].startswith("text/javascript")


def test_there_is_no_other_script(client, db) -> None:
    assert client.get(reverse("phone-module", args=[version(), "nothing"])).status_code == 404


def test_no_script_asks_for_what_the_policy_forbids() -> None:
    for name, text in modules().items():
        assert not re.search(rb"\beval\(|new Function|innerHTML|document\.write", text), name
