"""The picture of a movement: grey, made of lines, the same every time, and with its words."""

from __future__ import annotations

from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pytest
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.patches import Circle

from setwright.anatomy.atlas import part
from setwright.exercises.for_body import ForBody, for_body
from setwright.exercises.movements import movement
from setwright.handout.drawing import save
from setwright.handout.motion_picture import motion_picture
from setwright.handout.stage import limbs, stage
from setwright.mechanics.body import Build

BUILD = Build(1.75, 75.0, lengths={"thigh": 1.05})


@pytest.fixture(scope="module", params=["back-squat", "leg-extension", "lateral-raise"])
def found(request: pytest.FixtureRequest) -> ForBody:
    return for_body(movement(request.param), BUILD)


@pytest.fixture(scope="module")
def drawn(found: ForBody) -> Figure:
    return motion_picture(found, "A movement")


def words_in(figure: Figure) -> str:
    texts = [text.get_text() for one in figure.axes for text in one.texts]
    titles = [one.get_title(loc) for one in figure.axes for loc in ("left", "center")]
    return "\n".join([*texts, *titles, *(text.get_text() for text in figure.texts)])


def test_it_names_parts_and_body_and_load(found: ForBody, drawn: Figure) -> None:
    words = words_in(drawn)
    for row in found.parts[:10]:
        assert part(row.part).name in words
    for expected in (
        "A movement",
        "175 cm",
        "thigh +5 %",
        "the set:",
        "sticking point",
        "seen from",
    ):
        assert expected in words


def test_it_is_grey(drawn: Figure) -> None:
    canvas = FigureCanvasAgg(drawn)
    canvas.draw()
    pixels = np.asarray(canvas.buffer_rgba())[:, :, :3].astype(int)
    assert np.ptp(pixels, axis=2).max() == 0
    assert pixels.min() < 60


def test_the_bodies_are_lines_without_a_filled_shape(drawn: Figure) -> None:
    bodies = drawn.axes[-3:]
    for axes in bodies:
        assert len(axes.lines) >= 10
        rings = [patch for patch in axes.patches if isinstance(patch, Circle)]
        assert len(rings) == 1
        assert not any(patch.get_fill() for patch in rings)


def test_everything_stays_on_the_sheet(drawn: Figure) -> None:
    canvas = FigureCanvasAgg(drawn)
    canvas.draw()
    sheet = drawn.bbox
    for text in (*drawn.texts, *(t for axes in drawn.axes for t in axes.texts)):
        box = text.get_window_extent()
        assert box.x0 >= sheet.x0
        assert box.x1 <= sheet.x1


def test_the_same_movement_gives_the_same_bytes(found: ForBody, tmp_path: Path) -> None:
    for name in ("one.svg", "other.svg"):
        save(motion_picture(found, "A movement"), tmp_path / name)
    one, other = (tmp_path / name for name in ("one.svg", "other.svg"))
    assert one.read_bytes() == other.read_bytes()
    assert ElementTree.parse(one).getroot().tag.endswith("svg")


def test_a_view_is_chosen_that_shows_the_movement() -> None:
    views = {}
    for name in ("back-squat", "leg-extension", "lateral-raise"):
        one = for_body(movement(name), BUILD)
        views[name] = stage(one.movement, one.effort.asked, BUILD).view
    assert views == {"back-squat": "side", "leg-extension": "side", "lateral-raise": "front"}


def test_limbs_are_joined_and_have_the_lengths_of_the_body(found: ForBody) -> None:
    body = found.effort.asked.body
    for side, points in limbs(body, 0):
        if side != "middle":
            thigh, arm = body.placed[f"thigh {side}"], body.placed[f"upper arm {side}"]
            first = np.linalg.norm(points[2] - points[1])
            assert first == pytest.approx(thigh.length_m) or first == pytest.approx(arm.length_m)
