"""The pictures: well formed, the same every time, and of the right size."""

from __future__ import annotations

import re
import struct
import zlib
from pathlib import Path
from xml.etree import ElementTree

import pytest
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure

from setwright.documents.errors import DocumentError
from setwright.exercises import catalogue
from setwright.handout.drawing import DPI, fitted, save
from setwright.handout.week_picture import week_picture
from setwright.plan.week import Entry, Plan, Session
from setwright.rehearsal.model import Rehearsal
from setwright.rehearsal.rehearse import rehearse


@pytest.fixture(scope="module")
def drawn(plan: Plan, rehearsal: Rehearsal) -> Figure:
    return week_picture(plan, rehearsal)


def words_in(figure: Figure) -> str:
    axes = [text.get_text() for one in figure.axes for text in one.texts]
    legends = [text.get_text() for one in figure.legends for text in one.get_texts()]
    return "\n".join([*axes, *legends, *(text.get_text() for text in figure.texts)])


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


def test_drawing_twice_gives_the_same_bytes(
    plan: Plan, rehearsal: Rehearsal, tmp_path: Path
) -> None:
    for name in ("one", "other"):
        save(week_picture(plan, rehearsal), tmp_path / f"{name}.svg")
    assert (tmp_path / "one.svg").read_bytes() == (tmp_path / "other.svg").read_bytes()


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


def test_the_week_names_days_exercises_and_limits(plan: Plan, rehearsal: Rehearsal) -> None:
    words = words_in(week_picture(plan, rehearsal))
    joined = " ".join(words.split())
    for session in plan.sessions:
        assert session.day.capitalize() in words
        for entry in session.exercises:
            first = catalogue.exercise(entry.exercise).name.split()[0]
            assert first in joined
    assert "45 min to be had" in words


def test_no_label_of_the_week_leaves_the_sheet(plan: Plan, rehearsal: Rehearsal) -> None:
    _inside(week_picture(plan, rehearsal))


def _inside(figure: Figure) -> None:
    renderer = FigureCanvasAgg(figure).get_renderer()
    sheet = figure.bbox
    texts = [text for one in figure.axes for text in one.texts] + list(figure.texts)
    assert texts
    for text in texts:
        box = text.get_window_extent(renderer)
        assert box.x0 >= sheet.x0 - 1 and box.x1 <= sheet.x1 + 1, text.get_text()
        assert box.y0 >= sheet.y0 - 1 and box.y1 <= sheet.y1 + 1, text.get_text()


def crowded() -> Plan:
    """Three exercises alternated, short blocks, long names, and more than the minutes to be had."""

    def once(exercise: str, letter: str | None = None) -> Entry:
        return Entry(
            exercise=exercise, sets=1, reps=(5, 5), rir=(0, 0), rest_s=(0, 0), superset=letter
        )

    entries = (
        once("hip-abduction-machine-hips-open", "A"),
        once("single-leg-romanian-deadlift", "A"),
        once("deep-knee-split-squat", "A"),
        once("bodyweight-bulgarian-split-squat"),
        once("bodyweight-squat"),
    )
    name = "A session whose name is longer than its column"
    session = Session(name=name, day="sunday", minutes=18, exercises=entries)
    return Plan(setwright="plan/1", title="Long " * 20, sessions=(session,))


def test_labels_of_the_week_do_not_cover_one_another(plan: Plan, rehearsal: Rehearsal) -> None:
    tight = crowded()
    for figure in (week_picture(plan, rehearsal), week_picture(tight, rehearse(tight))):
        _inside(figure)
        renderer = FigureCanvasAgg(figure).get_renderer()
        boxes = [
            (text.get_text(), text.get_window_extent(renderer).shrunk(0.98, 0.75))
            for text in figure.axes[0].texts
        ]
        hits = [
            (one[0], other[0])
            for number, one in enumerate(boxes)
            for other in boxes[number + 1 :]
            if one[1].overlaps(other[1])
        ]
        assert hits == []


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
