from __future__ import annotations

import dataclasses

import numpy as np
import pypdfium2 as pdfium
import pytest

from setwright.audit.audit import audit
from setwright.handout.content.model import Content
from setwright.handout.export import Wishes
from setwright.handout.pdf.render import pdf
from setwright.handout.pdf.week_pages import week_pages
from setwright.plan.week import Plan

SIZES = {"a4": (595.3, 841.9), "letter": (612.0, 792.0)}
# Points that every printer leaves white, and that the boxes of two lines may share.
MARGIN, TOUCH = 15.0, 1.0


def squeezed(words: str) -> str:
    """Words without spaces, breaks and soft places to break."""
    return "".join(letter for letter in words if letter.isprintable() and not letter.isspace())


def client_of(content: Content) -> Content:
    return dataclasses.replace(content, coach=None)


def words_of(made: bytes) -> list[str]:
    return [page.get_textpage().get_text_range() for page in pdfium.PdfDocument(made)]


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_six_days_of_twelve_exercises_take_six_pages(
    hard_content: Content, wishes: Wishes, paper: str
) -> None:
    made = pdf(client_of(hard_content), paper, wishes.moment)
    document = pdfium.PdfDocument(made)
    assert len(document) == 6
    for page, session in zip(document, hard_content.sessions, strict=True):
        assert page.get_size() == pytest.approx(SIZES[paper], abs=0.5)
        words = squeezed(page.get_textpage().get_text_range())
        for line in session.lines:
            assert squeezed(line.name) in words
            assert squeezed(line.dose) in words
            assert squeezed(line.rest) in words
        assert squeezed(hard_content.stop_signs[0]) in words


@pytest.fixture(scope="module", params=["a4", "letter"])
def whole(
    request: pytest.FixtureRequest, hard: Plan, hard_content: Content, wishes: Wishes
) -> pdfium.PdfDocument:
    """The coach's handout, which begins with the client's pages, on both sheets."""
    week = week_pages(hard, audit(hard).rehearsal)
    return pdfium.PdfDocument(pdf(hard_content, request.param, wishes.moment, week))


def test_no_letter_leaves_the_page_and_no_line_covers_another(whole: pdfium.PdfDocument) -> None:
    seen = 0
    for page in whole:
        width, height = page.get_size()
        text = page.get_textpage()
        boxes = np.array([text.get_rect(n) for n in range(text.count_rects())])
        seen += len(boxes)
        left, bottom, right, top = boxes.T
        assert left.min() >= MARGIN and right.max() <= width - MARGIN
        assert bottom.min() >= MARGIN and top.max() <= height - MARGIN
        across = np.minimum.outer(right, right) - np.maximum.outer(left, left)
        down = np.minimum.outer(top, top) - np.maximum.outer(bottom, bottom)
        shared = np.argwhere(np.triu((across > TOUCH) & (down > TOUCH), 1))
        assert not len(shared), boxes[shared[0]]
    assert seen > 100 * len(whole)


def test_every_page_is_grey(whole: pdfium.PdfDocument) -> None:
    for page in whole:
        drawn = page.render(scale=0.5).to_numpy()[..., :3].astype(int)
        assert np.ptp(drawn, axis=2).max() <= 2
        assert drawn.min() < 120 < drawn.max()


def test_the_parts_take_one_page(whole: pdfium.PdfDocument, hard_content: Content) -> None:
    assert hard_content.coach is not None
    last = squeezed(whole[len(whole) - 1].get_textpage().get_text_range())
    assert last.startswith("Whateachpartgets")
    for row in hard_content.coach.parts:
        assert squeezed(row.part) in last and squeezed(row.growth) in last


def test_client_text_is_set_as_it_is_written(hard_content: Content, wishes: Wishes) -> None:
    first = squeezed(words_of(pdf(client_of(hard_content), "a4", wishes.moment))[0])
    assert squeezed("#set text(red) *b* $x$ `raw` </style><script>x</script> &amp;") in first


def test_every_font_is_embedded_and_ours(hard: Plan, hard_content: Content, wishes: Wishes) -> None:
    week = week_pages(hard, audit(hard).rehearsal)
    document = pdfium.PdfDocument(pdf(hard_content, "a4", wishes.moment, week))
    names = set()
    for page in document:
        for item in page.get_objects(filter=(pdfium.raw.FPDF_PAGEOBJ_TEXT,)):
            font = item.get_font()
            assert font.is_embedded
            names.add(font.get_base_name().split("+")[-1])
    assert names <= {"DejaVuSans", "DejaVuSans-Bold", "DejaVuSans-Oblique"}


def test_the_coach_gets_the_audit_the_week_and_every_part(
    plan: Plan, coach_content: Content, wishes: Wishes
) -> None:
    assert coach_content.coach is not None
    pages = words_of(
        pdf(coach_content, "a4", wishes.moment, week_pages(plan, audit(plan).rehearsal))
    )
    assert len(pages) > len(coach_content.sessions)
    together = squeezed(" ".join(pages[len(coach_content.sessions) :]))
    for one in (*coach_content.coach.misses, *coach_content.coach.close):
        assert squeezed(one.words) in together
    for row in coach_content.coach.parts:
        assert squeezed(row.part) in together


def test_a_client_sees_warm_up_range_stand_in_and_own_cautions(
    client_content: Content, wishes: Wishes
) -> None:
    pages = words_of(pdf(client_content, "a4", wishes.moment))
    assert len(pages) == len(client_content.sessions)
    for words, session in zip(pages, client_content.sessions, strict=True):
        page = squeezed(words)
        for line in session.lines:
            for said in (line.range_cue, line.substitute, line.note, ", ".join(line.ramp)):
                assert squeezed(said) in page
        for one in client_content.own_cautions:
            assert squeezed(one) in page
        assert page.count("reps") >= sum(len(line.sets) for line in session.lines)


def test_the_same_moment_gives_the_same_bytes(client_content: Content, wishes: Wishes) -> None:
    assert pdf(client_content, "a4", wishes.moment) == pdf(client_content, "a4", wishes.moment)


def test_the_coach_s_sheet_needs_the_picture(coach_content: Content, wishes: Wishes) -> None:
    with pytest.raises(ValueError, match="picture of the week"):
        pdf(coach_content, "a4", wishes.moment)
