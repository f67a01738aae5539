"""The pictures: well formed, the same every time, and of the right size."""

from __future__ import annotations

import re
import struct
import zlib
from pathlib import Path
from xml.etree import ElementTree

import pytest
from matplotlib.figure import Figure

from setwright.documents.errors import DocumentError
from setwright.handout.drawing import DPI, SOFT, bare, fitted, save, sheet


@pytest.fixture(scope="module")
def drawn() -> Figure:
    """A picture as the ones of strength and of what was done are made."""
    figure = sheet(4, 3)
    axes = figure.add_axes((0.2, 0.2, 0.7, 0.6))
    bare(axes)
    axes.plot([0, 1], [0, 1], color=SOFT)
    axes.text(0.1, 0.8, "5 $ and $ a word")
    return figure


def test_the_svg_is_well_formed_and_undated(drawn: Figure, tmp_path: Path) -> None:
    path = tmp_path / "picture.svg"
    save(drawn, path)
    root = ElementTree.parse(path).getroot()
    assert root.tag.endswith("svg")
    assert b"dc:date" not in path.read_bytes()


def test_saving_twice_gives_the_same_bytes(drawn: Figure, tmp_path: Path) -> None:
    for suffix in (".svg", ".png"):
        one, other = tmp_path / f"one{suffix}", tmp_path / f"other{suffix}"
        save(drawn, one)
        save(drawn, other)
        assert one.read_bytes() == other.read_bytes()


def test_the_png_has_the_size_of_the_sheet_and_ink_on_it(drawn: Figure, tmp_path: Path) -> None:
    path = tmp_path / "picture.png"
    save(drawn, path)
    raw = path.read_bytes()
    assert raw[:8] == b"\x89PNG\r\n\x1a\n"
    width, height = struct.unpack(">II", raw[16:24])
    assert width == pytest.approx(drawn.get_figwidth() * DPI, abs=1)
    assert height == pytest.approx(drawn.get_figheight() * DPI, abs=1)
    assert len(set(_pixels(raw))) > 4


def _pixels(raw: bytes) -> bytes:
    at, data = 8, b""
    while at < len(raw):
        (length,) = struct.unpack(">I", raw[at : at + 4])
        if raw[at + 4 : at + 8] == b"IDAT":
            data += raw[at + 8 : at + 8 + length]
        at += length + 12
    return zlib.decompress(data)


def test_no_picture_uses_colour(drawn: Figure, tmp_path: Path) -> None:
    path = tmp_path / "picture.svg"
    save(drawn, path)
    colours = set(re.findall(r"#[0-9a-f]{6}\b", path.read_text()))
    assert colours
    assert all(one[1:3] == one[3:5] == one[5:7] for one in colours)


def test_another_suffix_is_refused_and_nothing_is_left(drawn: Figure, tmp_path: Path) -> None:
    with pytest.raises(DocumentError):
        save(drawn, tmp_path / "picture.bmp")
    with pytest.raises(DocumentError):
        save(drawn, tmp_path / "missing" / "picture.png")
    assert list(tmp_path.iterdir()) == []


def test_long_words_are_cut_to_the_room() -> None:
    lines = fitted("a very long name of an exercise that never ends", 8, 1.0, 2)
    assert len(lines) == 2
    assert lines[-1].endswith("…")
