"""The judge of pages is no rubber stamp: each fault is one that it must see."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page

PAGE = "<!DOCTYPE html><html lang='en'><head><title>T</title></head><body><main>%s</main></body>"


@pytest.mark.parametrize(
    ("rule", "markup"),
    [
        ("color-contrast", "<p style='color: #999'>pale</p>"),
        ("image-alt", "<img src='data:image/gif;base64,R0lGODlhAQABAAAAACw='>"),
        ("label", "<input type='text'>"),
        ("link-name", "<a href='#x'></a>"),
        ("target-size", "<button style='width: 9px; height: 9px'>a</button>" * 2),
    ],
)
def test_a_fault_is_seen(
    page: Page, axe_violations: Callable[[Page], list[str]], rule: str, markup: str
) -> None:
    page.set_content(PAGE % markup)
    assert rule in [one.split(":")[0] for one in axe_violations(page)]


def test_a_sound_page_passes(page: Page, axe_violations: Callable[[Page], list[str]]) -> None:
    page.set_content(PAGE % "<h1>Sound</h1><p>black on white</p>")
    assert axe_violations(page) == []
