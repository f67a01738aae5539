"""What all tests share: every module loaded, and a real browser, with axe to judge its pages."""

from __future__ import annotations

import os
import pkgutil
import shutil
from collections.abc import Callable, Iterator
from importlib import import_module
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, sync_playwright

import setwright

NAMES = ("chromium", "chromium-browser", "google-chrome")
# No sandbox, because a build machine runs as root; and nothing the browser asks for by itself.
FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
# Level AA of the Web Content Accessibility Guidelines 2.2 takes in everything before it.
WCAG_22_AA = ("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa")


def pytest_collection_finish(session: pytest.Session) -> None:
    """Load every module: property tests try the constants of those that are loaded.

    So a test draws the same examples whatever ran before it.
    """
    for module in pkgutil.walk_packages(setwright.__path__, "setwright."):
        if not module.name.endswith("__main__"):
            import_module(module.name)


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """One chromium for a whole run; a machine without it fails these tests."""
    found = os.environ.get("CHROMIUM") or next(filter(None, map(shutil.which, NAMES)), None)
    if found is None:
        pytest.fail("no chromium on the path: run scripts/ensure_programs.sh, or set CHROMIUM")
    # Playwright's loop runs in this thread, which database calls of Django would take amiss.
    os.environ["DJANGO_ALLOW_ASYNC_UNSAFE"] = "true"
    with sync_playwright() as driver:
        made = driver.chromium.launch(executable_path=found, headless=True, args=list(FLAGS))
        yield made
        made.close()


@pytest.fixture
def open_page(browser: Browser) -> Iterator[Callable[..., Page]]:
    """Open a page with nothing remembered; words are those of ``Browser.new_context``.

    For example ``open_page(viewport={"width": 390, "height": 844}, color_scheme="dark")``.
    """
    contexts = []

    def opened(**wishes: Any) -> Page:
        wishes.setdefault("viewport", {"width": 1280, "height": 800})
        contexts.append(browser.new_context(**wishes))
        page = contexts[-1].new_page()
        page.set_default_timeout(10_000)
        return page

    yield opened
    for context in contexts:
        context.close()


@pytest.fixture
def page(open_page: Callable[..., Page]) -> Page:
    """A page 1280 pixels wide, in light colours."""
    return open_page()


@pytest.fixture(scope="session")
def axe_violations() -> Callable[[Page], list[str]]:
    """What axe finds against WCAG 2.2 AA: rule, help, and the elements it names."""

    def found(page: Page) -> list[str]:
        answer = Axe().run(page, options={"runOnly": {"type": "tag", "values": list(WCAG_22_AA)}})
        return [
            f"{one['id']}: {one['help']}: "
            + "; ".join(f"{node['target']} {node['failureSummary']}" for node in one["nodes"])
            for one in answer.response["violations"]
        ]

    return found
