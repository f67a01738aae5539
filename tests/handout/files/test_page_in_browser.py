"""The page where it is read: a phone, a desk, large type, paper, no network."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Mapping
from pathlib import Path

import pypdfium2 as pdfium
import pytest
from playwright.sync_api import Page

from setwright.audit.audit import audit
from setwright.handout.content.model import Content
from setwright.handout.page.build import page as html
from setwright.handout.pdf.week_pages import week_pages
from setwright.plan.week import Plan

READERS = ("client", "coach", "hard")
PHONE, DESK = {"width": 390, "height": 844}, {"width": 1280, "height": 800}
NARROWEST = {"width": 320, "height": 640}
# Points that are left white at the sides of a sheet.
EDGE = 30.0
Open = Callable[..., Page]


@pytest.fixture(scope="session")
def files(
    plan: Plan,
    hard: Plan,
    client_content: Content,
    coach_content: Content,
    hard_content: Content,
    tmp_path_factory: pytest.TempPathFactory,
) -> Mapping[str, Path]:
    """The page for a client, for a coach, and for two days of hostile words."""
    folder = tmp_path_factory.mktemp("pages")
    two = hard.model_copy(update={"sessions": hard.sessions[:2]})
    hard_content = dataclasses.replace(hard_content, sessions=hard_content.sessions[:2])
    made = {
        "client": html(client_content),
        "coach": html(coach_content, week_pages(plan, audit(plan).rehearsal)),
        "hard": html(hard_content, week_pages(two, audit(two).rehearsal)),
    }
    for name, words in made.items():
        (folder / f"{name}.html").write_text(words, encoding="utf-8")
    return {name: folder / f"{name}.html" for name in made}


def shown(page: Page, file: Path) -> Page:
    page.goto(file.as_uri())
    return page


# Axe takes seconds on the page of hostile words, so that one is judged once.
JUDGED = [
    pytest.param(reader, scheme, screen, id=f"{reader}-{scheme}-{screen['width']}")
    for reader in ("client", "coach")
    for scheme in ("light", "dark")
    for screen in (PHONE, DESK)
]


@pytest.mark.parametrize(
    ("reader", "scheme", "screen"), [*JUDGED, pytest.param("hard", "dark", PHONE, id="hard")]
)
def test_axe_finds_nothing(
    open_page: Open,
    files: Mapping[str, Path],
    axe_violations: Callable[[Page], list[str]],
    reader: str,
    scheme: str,
    screen: dict[str, int],
) -> None:
    page = shown(open_page(viewport=screen, color_scheme=scheme), files[reader])
    ground = page.evaluate("getComputedStyle(document.body).backgroundColor")
    assert (ground == "rgb(255, 255, 255)") == (scheme == "light")
    assert axe_violations(page) == []


def beyond(page: Page) -> list[str]:
    """Elements that stick out at the side, unless they stand in a box of their own that scrolls."""
    found: list[str] = page.evaluate(
        """() => [...document.querySelectorAll('body *')].filter(one =>
            !one.parentElement.closest('.wide') && !one.matches('.skip') &&
            (one.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5 ||
             one.getBoundingClientRect().left < -0.5)).map(one => one.outerHTML.slice(0, 120))"""
    )
    return found


@pytest.mark.parametrize("reader", READERS)
@pytest.mark.parametrize("screen", [PHONE, NARROWEST], ids=["390", "320"])
@pytest.mark.parametrize("size", ["100%", "200%"])
def test_no_scrolling_sideways(
    open_page: Open, files: Mapping[str, Path], reader: str, screen: dict[str, int], size: str
) -> None:
    # WCAG 2.2, 1.4.4 (text at 200 %) and 1.4.10 (320 pixels).
    page = shown(open_page(viewport=screen), files[reader])
    before = page.evaluate("parseFloat(getComputedStyle(document.querySelector('dd')).fontSize)")
    page.evaluate("size => { document.documentElement.style.fontSize = size }", size)
    after = page.evaluate("parseFloat(getComputedStyle(document.querySelector('dd')).fontSize)")
    assert after == pytest.approx(before * float(size[:-1]) / 100)
    wide, room = page.evaluate(
        "[document.documentElement.scrollWidth, document.documentElement.clientWidth]"
    )
    assert wide <= room
    assert beyond(page) == []


@pytest.mark.parametrize("reader", ["client", "coach"])
def test_no_word_of_a_table_is_broken(
    open_page: Open, files: Mapping[str, Path], reader: str
) -> None:
    page = shown(open_page(viewport=PHONE), files[reader])
    broken, seen = page.evaluate(
        """() => {
            const broken = [];
            let seen = 0;
            for (const cell of document.querySelectorAll('th, td')) {
                const text = cell.firstChild;
                if (!text || text.nodeType !== Node.TEXT_NODE) continue;
                for (const word of text.data.matchAll(/[\\p{L}]+/gu)) {
                    const range = document.createRange();
                    range.setStart(text, word.index);
                    range.setEnd(text, word.index + word[0].length);
                    seen += 1;
                    if (range.getClientRects().length !== 1) broken.push(word[0]);
                }
            }
            return [broken, seen];
        }"""
    )
    assert broken == [] and seen > 20


@pytest.mark.parametrize("reader", READERS)
def test_nothing_is_asked_of_a_network(
    open_page: Open, files: Mapping[str, Path], reader: str
) -> None:
    page = open_page(offline=True)
    asked: list[str] = []
    faults: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.on("console", lambda said: faults.append(said.text))
    page.on("dialog", lambda dialog: faults.append(dialog.message))
    shown(page, files[reader]).wait_for_load_state("networkidle")
    assert [one for one in asked if not one.startswith("data:")] == [files[reader].as_uri()]
    assert faults == []
    drawn = page.evaluate("[...document.images].map(one => one.complete && one.naturalWidth > 0)")
    assert all(drawn) and len(drawn) == {"client": 0, "coach": 1, "hard": 1}[reader]


def test_the_keyboard_comes_to_the_sessions_first(
    open_page: Open, files: Mapping[str, Path]
) -> None:
    page = shown(open_page(viewport=PHONE), files["client"])
    page.keyboard.press("Tab")
    link = page.locator("a.skip")
    box = link.bounding_box()
    assert box and box["x"] >= 0 and link.evaluate("one => one === document.activeElement")
    page.keyboard.press("Enter")
    assert page.url.endswith("#sessions")


def squeezed(words: str) -> str:
    """Words without spaces and hyphens, which a reader of PDF takes for those at a line's end."""
    return "".join(one for one in words if one.isalnum() or one in "+@'/()%:;,.")


@pytest.mark.parametrize("reader", READERS)
def test_paper_has_every_word_and_a_page_for_each_session(
    open_page: Open,
    files: Mapping[str, Path],
    axe_violations: Callable[[Page], list[str]],
    reader: str,
) -> None:
    page = shown(open_page(color_scheme="dark"), files[reader])
    headings = page.locator("section.session > h2").all_inner_texts()
    page.emulate_media(media="print")
    assert not page.locator("nav").is_visible()
    assert page.evaluate("getComputedStyle(document.body).color") == "rgb(0, 0, 0)"
    assert reader == "hard" or axe_violations(page) == []
    document = pdfium.PdfDocument(page.pdf(format="A4"))
    pages = [squeezed(one.get_textpage().get_text_range()) for one in document]
    starts = [
        next(n for n, words in enumerate(pages) if squeezed(one) in words) for one in headings
    ]
    assert starts[0] == 0 and starts == sorted(set(starts))
    for words, at in list(zip(headings, starts, strict=True))[1:]:
        assert pages[at].startswith(squeezed(words))
    said = "".join(pages)
    for words in page.locator("h3, h4, dd, td, li").all_inner_texts():
        assert squeezed(words) in said
    for at in range(len(document)):
        text = document[at].get_textpage()
        boxes = [text.get_rect(n) for n in range(text.count_rects())]
        assert min(box[0] for box in boxes) >= EDGE
        assert max(box[2] for box in boxes) <= document[at].get_width() - EDGE


def test_the_picture_keeps_its_size_on_a_phone(open_page: Open, files: Mapping[str, Path]) -> None:
    page = shown(open_page(viewport=PHONE), files["coach"])
    picture = page.locator("img")
    box = picture.bounding_box()
    natural = picture.evaluate("one => one.naturalWidth")
    assert box and box["width"] == pytest.approx(natural, abs=1) and natural > PHONE["width"]
    region = page.locator(".wide", has=picture)
    region.focus()
    page.keyboard.press("ArrowRight")
    # The page forbids scripts, so its own clock cannot be asked to wait.
    for _ in range(100):
        if region.evaluate("one => one.scrollLeft") > 0:
            return
        page.wait_for_timeout(100)
    pytest.fail("the picture does not scroll by keyboard")
