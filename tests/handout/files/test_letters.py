"""Names in every script: printed, said in words, or marked; never an empty box."""

from __future__ import annotations

import dataclasses
import unicodedata
from collections.abc import Iterator
from pathlib import Path

import pypdfium2 as pdfium
import pytest
import typst
from fontTools.fontBuilder import FontBuilder
from fontTools.pens.ttGlyphPen import TTGlyphPen
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.exercises import catalogue
from setwright.handout.content.model import Content
from setwright.handout.export import Wishes
from setwright.handout.pdf import fonts as of_page
from setwright.handout.pdf.letters import MARK, PLAIN_UNTIL, SIGNS, spelled, uncommon
from setwright.handout.pdf.render import pdf, unprintable
from setwright.handout.pdf.week_pages import week_pages
from setwright.plan.week import Plan
from setwright.rehearsal.rehearse import rehearse

OURS = {"DejaVuSans", "DejaVuSans-Bold", "DejaVuSans-Oblique"}
# A letter for private use that no font has.
NOWHERE = "\U0010fffd"
PRINTED = {
    "Cyrillic": "Дмитрий Щукин",
    "Greek": "Αθηνά Παπαδοπούλου",
    "Vietnamese": "Nguyễn Thị Hằng",
    "Vietnamese with marks apart": unicodedata.normalize("NFD", "Nguyễn Thị Hằng"),
    "Polish": "Zażółć gęślą jaźń",
    "Turkish": "İğdır Şahin",
    "Armenian": "Արամ",
    "Georgian": "ნინო",
}


def named(content: Content, person: str) -> Content:
    return dataclasses.replace(content, title=person, person=person)


def faces_in(made: bytes) -> set[str]:
    names = set()
    for page in pdfium.PdfDocument(made):
        for item in page.get_objects(filter=(pdfium.raw.FPDF_PAGEOBJ_TEXT,)):
            assert item.get_font().is_embedded
            names.add(item.get_font().get_base_name().split("+")[-1])
    return names


def first_page(made: bytes) -> str:
    text: str = pdfium.PdfDocument(made)[0].get_textpage().get_text_range()
    return text.replace("\u200b", "")


@pytest.mark.parametrize("name", PRINTED.values(), ids=PRINTED)
def test_scripts_of_our_own_font_are_printed(
    client_content: Content, wishes: Wishes, name: str
) -> None:
    made = pdf(named(client_content, name), "a4", wishes.moment)
    assert faces_in(made) <= OURS
    assert unicodedata.normalize("NFC", name) in first_page(made)
    assert unprintable(named(client_content, name)) == ()


@pytest.mark.parametrize("name", ["محمد عبد الله", "דוד כהן"])
def test_scripts_from_right_to_left_are_printed(
    client_content: Content, wishes: Wishes, name: str
) -> None:
    content = named(client_content, name)
    assert faces_in(pdf(content, "a4", wishes.moment)) <= OURS
    assert unprintable(content) == ()


def test_plain_letters_and_our_own_signs_need_no_look() -> None:
    plain = {chr(n) for n in range(32, ord(PLAIN_UNTIL) + 1) if chr(n).isprintable()}
    assert plain | SIGNS <= of_page.own_letters()
    said = "".join(one.name + "".join((*one.cues, *one.cautions)) for one in catalogue.exercises())
    assert not uncommon(said)


def test_a_symbol_is_said_in_words(client_content: Content, wishes: Wishes) -> None:
    content = named(client_content, "Mia 💪🏽 👩‍👧 🇵🇹 ☝🏽")
    made = pdf(content, "a4", wishes.moment)
    assert "Mia [flexed biceps] [woman] [girl] [p] [t] ☝" in first_page(made)
    assert faces_in(made) <= OURS and unprintable(content) == ()


def test_letters_of_no_font_are_marked_and_named(client_content: Content, wishes: Wishes) -> None:
    content = named(client_content, f"Li {NOWHERE}{NOWHERE} Bo{NOWHERE}")
    made = pdf(content, "a4", wishes.moment)
    assert f"Li {MARK} Bo{MARK}" in first_page(made)
    assert faces_in(made) <= OURS
    assert unprintable(content) == (NOWHERE,)


@pytest.fixture
def with_a_font(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """A machine that has one font more, for two letters."""
    pen = TTGlyphPen(None)
    for at, point in enumerate(((100, 0), (100, 700), (800, 700), (800, 0))):
        (pen.lineTo if at else pen.moveTo)(point)
    pen.closePath()
    made = FontBuilder(1000, isTTF=True)
    made.setupGlyphOrder([".notdef", "one", "two"])
    made.setupCharacterMap({ord("王"): "one", ord("明"): "two"})
    made.setupGlyf(dict.fromkeys((".notdef", "one", "two"), pen.glyph()))
    made.setupHorizontalMetrics(dict.fromkeys((".notdef", "one", "two"), (900, 100)))
    made.setupHorizontalHeader(ascent=800, descent=-200)
    made.setupNameTable(
        {"familyName": "Two Letters", "styleName": "Regular", "psName": "TwoLetters-Regular"}
    )
    made.setupOS2(sTypoAscender=800, usWinAscent=800, usWinDescent=200)
    made.setupPost()
    made.save(str(tmp_path / "two.ttf"))
    folder = of_page.folder()
    known = typst.Fonts(
        include_system_fonts=False, include_embedded_fonts=True,
        font_paths=[str(folder), str(tmp_path)],
    )  # fmt: skip
    monkeypatch.setattr(of_page, "fonts", lambda of_the_machine=False: known)
    monkeypatch.setattr("setwright.handout.pdf.render.fonts", of_page.fonts)
    of_page.faces.cache_clear()
    yield
    of_page.faces.cache_clear()


@pytest.mark.usefixtures("with_a_font")
def test_a_font_of_the_machine_is_used_for_what_ours_lacks(
    client_content: Content, wishes: Wishes
) -> None:
    content = named(client_content, "王明 Li")
    made = pdf(content, "a4", wishes.moment)
    assert "王明 Li" in first_page(made)
    assert faces_in(made) - OURS == {"TwoLetters-Regular"}
    assert unprintable(content) == ()
    assert unprintable(named(client_content, f"王{NOWHERE}")) == (NOWHERE,)


def test_a_broken_font_has_no_letters(tmp_path: Path) -> None:
    (tmp_path / "broken.ttf").write_bytes(b"no font")
    assert of_page.has(str(tmp_path / "broken.ttf"), 0) == frozenset()
    assert of_page.has(str(tmp_path / "absent.ttf"), 0) == frozenset()


@settings(derandomize=True, max_examples=30, deadline=None)
@given(words=st.text(st.characters(blacklist_categories=["Cs"]), min_size=1, max_size=40))
def test_no_text_leaves_an_empty_box(client_content: Content, wishes: Wishes, words: str) -> None:
    """The last resort among matplotlib's fonts has a box for every letter; it is never taken."""
    session = client_content.sessions[0]
    session = dataclasses.replace(session, groups=session.groups[:1])
    short = dataclasses.replace(client_content, sessions=(session,))
    made = pdf(named(short, words), "a4", wishes.moment)
    assert not [name for name in faces_in(made) if "LastResort" in name]


@settings(derandomize=True, max_examples=300)
@given(words=st.text(max_size=60), lacking=st.sets(st.characters(min_codepoint=0x250), max_size=9))
def test_nothing_lacking_is_left_and_plain_words_stay(words: str, lacking: set[str]) -> None:
    shown = spelled(words, lacking)
    assert not lacking & set(shown)
    if max(words, default="") <= PLAIN_UNTIL:
        assert shown == words
    assert set(shown) <= set(words) | set(MARK) | {chr(n) for n in range(32, 127)}


def test_the_picture_of_the_week_has_no_boxes_either(
    plan: Plan, recwarn: pytest.WarningsRecorder
) -> None:
    first = plan.sessions[0].model_copy(update={"name": "脚 Ноги 🏋️"})
    rare = plan.model_copy(update={"title": "王小明", "sessions": (first, *plan.sessions[1:])})
    assert all("<svg" in one for one in week_pages(rare, rehearse(rare)))
    assert not [one for one in recwarn if "missing" in str(one.message)]
