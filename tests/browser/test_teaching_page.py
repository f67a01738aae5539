"""The teaching page before axe, and on a phone, in a real browser."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page

from setwright.handout.teaching.build import teaching
from setwright.handout.teaching.page import page as page_of
from setwright.plan.read import read_any_plan, read_intake

ROOT = Path(__file__).parents[2]
WIDE, PHONE = {"width": 1440, "height": 900}, {"width": 390, "height": 844}


@pytest.fixture(scope="module", params=["short", "full"])
def html(request: pytest.FixtureRequest) -> str:
    plan, intake = (ROOT / "examples" / f"{name}.yaml" for name in ("plan", "intake"))
    week = read_any_plan(plan.read_text(encoding="utf-8"), plan.name)
    person = read_intake(intake.read_text(encoding="utf-8"), intake.name)
    return page_of(teaching(week, person, request.param))


@pytest.mark.parametrize(("viewport", "scheme"), [(WIDE, "light"), (PHONE, "dark")])
def test_axe_finds_nothing(
    html: str,
    viewport: dict[str, int],
    scheme: str,
    open_page: Callable[..., Page],
    axe_violations: Callable[[Page], list[str]],
) -> None:
    page = open_page(viewport=viewport, color_scheme=scheme)
    asked: list[str] = []
    page.on("request", lambda one: asked.append(one.url))
    page.set_content(html)
    assert axe_violations(page) == []
    assert asked == []


def test_a_phone_scrolls_down_and_only_down(html: str, open_page: Callable[..., Page]) -> None:
    page = open_page(viewport=PHONE)
    page.set_content(html)
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    # What is wider than the phone scrolls within its own frame, which the keyboard can reach.
    frames = page.locator(".wide")
    assert frames.count() > 3
    assert page.evaluate("[...document.querySelectorAll('.wide')].every(one => one.tabIndex === 0)")
