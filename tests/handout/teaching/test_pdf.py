"""The document on paper, read back by code that did not write it."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime

import numpy as np
import pypdfium2 as pdfium
import pytest

from setwright.audit.registry import registry
from setwright.handout.teaching.build import teaching
from setwright.handout.teaching.content import Teaching
from setwright.handout.teaching.pdf import pdf
from setwright.plan.intake import Intake
from setwright.plan.week import Plan

SIZES = {"a4": (595.3, 841.9), "letter": (612.0, 792.0)}
# Points that every printer leaves white.
MARGIN = 15.0
FACES = {"LibertinusSerif", "DejaVuSans"}
Printed = Callable[[Teaching, str], pdfium.PdfDocument]


@pytest.fixture(scope="module")
def printed(moment: datetime) -> Printed:
    """A document on paper, each set only once."""
    made: dict[tuple[int, str], pdfium.PdfDocument] = {}

    def one(document: Teaching, paper: str) -> pdfium.PdfDocument:
        key = id(document), paper
        if key not in made:
            made[key] = pdfium.PdfDocument(pdf(document, paper, moment))
        return made[key]

    return one


def squeezed(words: str) -> str:
    """Words without spaces, breaks and soft places to break."""
    return "".join(letter for letter in words if letter.isprintable() and not letter.isspace())


def words_of(document: pdfium.PdfDocument) -> str:
    return squeezed("".join(page.get_textpage().get_text_range() for page in document))


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_short_one_takes_two_pages(
    short: Teaching, hard: Plan, printed: Printed, paper: str
) -> None:
    # Six days with names of sixty wide letters may need a third.
    for document, most in ((short, 2), (teaching(hard, None, "short"), 3)):
        pages = printed(document, paper)
        assert len(pages) <= most
        assert all(page.get_size() == pytest.approx(SIZES[paper], abs=0.5) for page in pages)


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_no_letter_leaves_the_page(hard_full: Teaching, printed: Printed, paper: str) -> None:
    pages = printed(hard_full, paper)
    assert len(pages) > 20
    for page in pages:
        width, height = page.get_size()
        text = page.get_textpage()
        boxes = np.array([text.get_rect(n) for n in range(text.count_rects())])
        left, bottom, right, top = boxes.T
        assert left.min() >= MARGIN and right.max() <= width - MARGIN
        assert bottom.min() >= MARGIN and top.max() <= height - MARGIN


def test_everything_said_is_printed(full: Teaching, printed: Printed) -> None:
    words = words_of(printed(full, "a4"))
    for section in full.sections:
        assert squeezed(section.title) in words
    for one in registry():
        assert squeezed(one.title[1:]) in words
    for source in full.sources:
        assert squeezed(source.finding[:40]) in words


def test_hostile_words_are_set_as_written(
    hard: Plan, hard_full: Teaching, printed: Printed
) -> None:
    words = words_of(printed(hard_full, "a4"))
    assert squeezed(hard.title) in words
    assert squeezed(hard.unavoidable[0].because) in words


def test_every_font_is_embedded_and_ours(full: Teaching, printed: Printed) -> None:
    names = set()
    for page in printed(full, "a4"):
        for item in page.get_objects(filter=(pdfium.raw.FPDF_PAGEOBJ_TEXT,)):
            font = item.get_font()
            assert font.is_embedded
            names.add(font.get_base_name().split("+")[-1].split("-")[0])
    assert names == FACES


def test_pictures_are_on_the_page(full: Teaching, printed: Printed) -> None:
    words = words_of(printed(full, "a4"))
    for label in ("effectivesetsaweek", "performancekept,%", "minutesaweek", "minutessaved"):
        assert label in words


def test_the_same_moment_gives_the_same_bytes(plan: Plan, intake: Intake, moment: datetime) -> None:
    one, other = (pdf(teaching(plan, intake, "short"), "a4", moment) for _ in range(2))
    assert one == other
