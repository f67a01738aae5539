"""Strength over time and what was done: pictures that keep every figure on the sheet."""

from datetime import date, timedelta

import pytest

from setwright.handout.done_picture import done_picture
from setwright.handout.drawing import save
from setwright.handout.strength_picture import StrengthLine, strength_picture
from setwright.rehearsal.strength import OneRm
from setwright.training.facts.attendance import WeekKept

MONDAY = date(2026, 9, 28)


def _line(name: str, count: int) -> StrengthLine:
    days = tuple(MONDAY.toordinal() + 7 * at for at in range(count))
    return StrengthLine(name, days, tuple(OneRm(80.0 + at, 76.0, 90.0, 3.0) for at in range(count)))


def _week(at: int, done: int = 40) -> WeekKept:
    return WeekKept(MONDAY + timedelta(weeks=at), 4, 3, 50, done)


@pytest.mark.parametrize("count", [1, 2, 3, 4, 7])
def test_every_exercise_gets_a_panel_inside_the_sheet(count):
    figure = strength_picture("Strength", [_line(f"Exercise {at}", 5) for at in range(count)])
    assert len(figure.axes) == count
    figure.canvas.draw()
    sheet = figure.bbox
    for axes in figure.axes:
        box = axes.get_tightbbox()
        assert box.x0 >= 0 and box.y0 >= 0 and box.x1 <= sheet.x1 and box.y1 <= sheet.y1
    boxes = [axes.get_tightbbox() for axes in figure.axes]
    for at, one in enumerate(boxes):
        assert not any(one.overlaps(other) for other in boxes[at + 1 :])


def test_the_interval_is_inside_its_panel_and_one_day_is_enough():
    figure = strength_picture("Strength", [_line("Row", 1), _line("Squat", 6)])
    for axes in figure.axes:
        low, high = axes.get_ylim()
        assert low < 76.0 and high > 90.0


def test_an_empty_log_is_refused():
    with pytest.raises(ValueError):
        strength_picture("Strength", [])
    with pytest.raises(ValueError):
        done_picture("Done", [])


def test_what_was_done_stands_in_figures_beside_its_bar():
    figure = done_picture("Done", [_week(0), _week(1, done=0)])
    words = [text.get_text() for text in figure.axes[0].texts]
    assert words == ["40/50", "0/50"]


def test_the_same_weeks_give_the_same_bytes(tmp_path):
    for name in ("one.svg", "two.svg"):
        save(done_picture("Done", [_week(at) for at in range(8)]), tmp_path / name)
    assert (tmp_path / "one.svg").read_bytes() == (tmp_path / "two.svg").read_bytes()
