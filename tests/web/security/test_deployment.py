"""Settings of a real deployment, read in a process of their own."""

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[3]


def django(tmp_path, *words, **more):
    keep = {key: os.environ[key] for key in ("PATH", "HOME", "LANG") if key in os.environ}
    settings = {"SETWRIGHT_DATA": str(tmp_path), "DJANGO_SETTINGS_MODULE": "setwright.web.settings"}
    return subprocess.run(
        [sys.executable, *words], env=keep | settings | more, capture_output=True, text=True
    )


def test_the_checks_for_deployment_find_nothing_under_https(tmp_path):
    done = django(
        tmp_path, "-m", "django", "check", "--deploy", "--fail-level", "INFO",
        SETWRIGHT_HTTPS="yes", SETWRIGHT_HOSTS="gym.example.org",
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert "no issues" in done.stdout


COOKIES = """
from django.conf import settings as s
print(s.SESSION_COOKIE_SECURE, s.CSRF_COOKIE_SECURE, s.SECURE_SSL_REDIRECT, s.DEBUG,
      s.SECURE_HSTS_SECONDS > 10**7, s.PASSWORD_HASHERS[0].rpartition(".")[2])
"""


@pytest.mark.parametrize(("https", "expected"), [("yes", "True True True"), ("", "False False")])
def test_cookies_go_over_https_only_where_it_is_served(tmp_path, https, expected):
    done = django(tmp_path, "-c", COOKIES, SETWRIGHT_HTTPS=https)
    assert done.stdout.startswith(expected)
    assert "False" in done.stdout.split()[3:4]
    assert done.stdout.split()[-1] == "Argon2PasswordHasher"


def test_every_workspace_has_a_secret_of_its_own_that_only_its_user_reads(tmp_path):
    first, second = tmp_path / "one", tmp_path / "two"
    script = "from django.conf import settings; print(settings.SECRET_KEY)"
    secrets = [django(folder, "-c", script).stdout.strip() for folder in (first, first, second)]
    assert secrets[0] == secrets[1] != secrets[2]
    assert len(secrets[0]) >= 50
    assert (first / "secret.key").stat().st_mode & 0o077 == 0


def test_there_are_no_secrets_in_the_tree():
    told = re.compile(
        r"BEGIN [A-Z ]*PRIVATE KEY|\b(?:ghp|gho|xox[bap]|sk)[_-][A-Za-z0-9]{20,}|AKIA[0-9A-Z]{16}"
        r"|(?:SECRET_KEY|PASSWORD|API_KEY)\s*=\s*[\"'][^\"']{8,}[\"']"
    )
    files = subprocess.run(
        ["git", "ls-files", "src", "scripts", "demo", "examples", "Makefile", "docs"],
        cwd=ROOT, capture_output=True, text=True,
    ).stdout.split()  # fmt: skip
    texts = [ROOT / name for name in files if not name.endswith((".png", ".json", ".xlsx"))]
    found = [
        path.name
        for path in texts or (ROOT / "src").rglob("*.py")
        if path.is_file() and told.search(path.read_text(encoding="utf-8", errors="ignore"))
    ]
    assert found == []
