"""Style sheets and scripts: kept for good, under addresses that change with them."""

import re
from urllib.parse import urljoin

import pytest

from setwright.web.assets import FOLDER, version
from setwright.web.templatetags.setwright import asset

OURS = FOLDER / "setwright"
SCRIPTS = sorted(one.relative_to(OURS).as_posix() for one in OURS.glob("js/**/*.js"))
STYLES = sorted(one.relative_to(OURS).as_posix() for one in OURS.glob("css/*.css"))


@pytest.mark.parametrize("name", [*SCRIPTS, *STYLES])
def test_a_file_is_kept_for_a_year(client, db, name):
    answer = client.get(asset(name))
    assert answer.status_code == 200
    assert "max-age=31536000" in answer["Cache-Control"]


@pytest.mark.parametrize("name", SCRIPTS)
def test_a_script_imports_scripts_of_its_own_version(client, db, name):
    address = asset(name)
    for other in re.findall(r'from "(\.[^"]+)"', (OURS / name).read_text()):
        neighbour = urljoin(address, other)
        assert f"/{version()}/" in neighbour
        assert client.get(neighbour).status_code == 200


def test_another_version_is_not_answered_with_this_one(client, db):
    assert client.get(asset(SCRIPTS[0]).replace(version(), "0123456789ab")).status_code == 404


def test_the_version_changes_with_any_file(tmp_path, monkeypatch):
    from setwright.web import assets

    monkeypatch.setattr(assets, "FOLDER", tmp_path)
    seen = set()
    for text in ("a", "b"):
        (tmp_path / "one.js").write_text(text)
        seen.add(assets.version.__wrapped__())
    assert len(seen) == 2
