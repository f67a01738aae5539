"""The drawing board: words stay words, files are whole, the same drawing gives the same bytes."""

from __future__ import annotations

import struct
from pathlib import Path
from xml.etree import ElementTree

import pytest
from fontTools.ttLib import TTFont
from hypothesis import example, given, settings
from hypothesis import strategies as st

from setwright.documents.errors import DocumentError
from setwright.handout.canvas import SIZE, Canvas, Scale, shortened, ticks
from setwright.handout.canvas_file import DOTS_PER_INCH, save_svg
from setwright.handout.letter_widths import measured
from setwright.handout.pdf.fonts import folder

NAMESPACE = "{http://www.w3.org/2000/svg}"


def board() -> Canvas:
    made = Canvas("board", 100, 50)
    made.box(0, 0, 40, 20, hatch="below")
    made.line([(0, 0), (100, 50)], dash="3 2")
    made.area([(0, 0), (10, 0), (0, 10)], "#e4e4e4")
    made.dot(50, 25, 3)
    made.text(5, 40, "words", bold=True, turned=True)
    return made


@settings(derandomize=True, max_examples=60)
@given(st.text(max_size=40))
@example("\ufffe<&>\x00\"'")
def test_words_stay_words(words: str) -> None:
    made = Canvas("a", 100, 50)
    made.text(1, 1, words)
    (found,) = ElementTree.fromstring(made.svg()).iter(f"{NAMESPACE}text")
    kept = "".join(one for one in words if ord(one) >= 32 and one not in "\ufffe\uffff")
    assert (found.text or "") == kept


def test_ids_begin_with_the_name_of_the_picture() -> None:
    root = ElementTree.fromstring(board().svg())
    idents = [one.get("id") for one in root.iter() if one.get("id")]
    assert idents == ["board-below"]


@settings(derandomize=True, max_examples=100)
@given(st.floats(-1e4, 1e4, allow_nan=False), st.floats(0.01, 1e4), st.integers(1, 12))
def test_ticks_are_within_and_not_too_many(low: float, span: float, most: int) -> None:
    found = ticks(low, low + span, most)
    assert len(found) <= most + 1
    slack = 1e-6 * max(abs(low), span, 1.0)
    assert all(low - slack <= one <= low + span + slack for one in found)
    assert sorted(found) == list(found)


def test_a_scale_maps_its_ends() -> None:
    scale = Scale(2, 4, 100, 50)
    assert (scale(2), scale(3), scale(4)) == (100, 75, 50)


def test_widths_are_those_of_the_font() -> None:
    place = folder()
    assert place is not None
    for name, bold, off in (("DejaVuSans.ttf", False, 0.01), ("DejaVuSans-Bold.ttf", True, 0.04)):
        font = TTFont(place / name)
        widths, letters, unit = font["hmtx"], font.getBestCmap(), font["head"].unitsPerEm
        for words in ("Wide MMM row", "an illicit little hill", "keeps 82% of its first set"):
            true = sum(widths[letters[ord(one)]][0] for one in words) / unit * 10
            assert measured(words, 10, bold) == pytest.approx(true, rel=off + 0.06 * bold)


@pytest.mark.parametrize("words", ["W" * 60, "i" * 300, "王" * 30])
def test_words_are_cut_to_their_room(words: str) -> None:
    assert 90 < measured(shortened(words, 100), SIZE) <= 100


def test_long_words_are_cut_with_a_mark() -> None:
    assert shortened("short", 200) == "short"
    cut = shortened("a name that is far too long for its room", 60)
    assert cut.endswith("…") and len(cut) < 20


def test_files_are_whole_and_the_same(tmp_path: Path) -> None:
    drawn = board().svg()
    for suffix in (".svg", ".png"):
        one, other = tmp_path / f"one{suffix}", tmp_path / f"other{suffix}"
        save_svg(drawn, one)
        save_svg(drawn, other)
        assert one.read_bytes() == other.read_bytes()
    width, height = struct.unpack(">II", (tmp_path / "one.png").read_bytes()[16:24])
    assert width == pytest.approx(100 / 72 * DOTS_PER_INCH, abs=1)
    assert height == pytest.approx(50 / 72 * DOTS_PER_INCH, abs=1)


def test_another_suffix_or_place_is_refused(tmp_path: Path) -> None:
    with pytest.raises(DocumentError, match=r"allowed: \.svg or"):
        save_svg(board().svg(), tmp_path / "picture.gif")
    with pytest.raises(DocumentError):
        save_svg(board().svg(), tmp_path / "missing" / "picture.svg")
    assert list(tmp_path.iterdir()) == []
