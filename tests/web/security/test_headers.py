"""What a browser is told about our pages, and what a page may not hold."""

import re

import pytest

from setwright.web.security.headers import POLICY

ADDRESSES = ("/sign-in", "/clients", "/tokens", "/password", "/clients/import", "/nowhere")


@pytest.mark.parametrize("address", ADDRESSES)
def test_every_answer_carries_the_policy_and_no_page_breaks_it(as_coach, address):
    answer = as_coach.get(address)
    assert answer["Content-Security-Policy"] == POLICY
    assert answer["X-Frame-Options"] == "DENY"
    assert answer["X-Content-Type-Options"] == "nosniff"
    assert answer["Referrer-Policy"] == "same-origin"
    assert answer["Cache-Control"] == "no-store"
    page = answer.content.decode()
    assert not re.search(r"<script(?![^>]*\bsrc=)", page)
    assert not re.search(r"\s(style|on[a-z]+|hx-on[^=]*)=", page)
    assert not re.search(r'(?:src|href)="(?:https?:)?//', page)


def test_the_policy_lets_nothing_in_that_is_not_ours():
    rules = dict(rule.partition(" ")[::2] for rule in POLICY.split("; "))
    assert rules["default-src"] == "'none'"
    assert rules["script-src"] == rules["style-src"] == "'self'"
    assert rules["frame-ancestors"] == rules["base-uri"] == "'none'"
    assert rules["form-action"] == "'self'"
    assert "unsafe" not in POLICY


@pytest.mark.parametrize("name", ["templates", "static"])
def test_no_template_or_script_brings_styles_or_code_of_its_own(name):
    from setwright.web.settings import HERE

    wrong = re.compile(
        r"\sstyle=|<style|\son[a-z]+=\"|hx-on|javascript:|\beval\(|new Function"
        r"|\.(inner|outer)HTML\s*="
    )
    files = [path for path in (HERE / name).rglob("*") if path.suffix in (".html", ".js")]
    assert files
    found = {path.name for path in files if wrong.search(path.read_text(encoding="utf-8"))}
    assert found == set()
