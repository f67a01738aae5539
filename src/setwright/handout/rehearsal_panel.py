"""The panels of the picture of a rehearsal."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.audit.criteria.performance_kept import worst_kept
from setwright.exercises import catalogue
from setwright.handout.canvas import FAINT, INK, PAPER, SIZE, SOFT, Canvas, Scale, shortened, ticks
from setwright.plan.week import Entry
from setwright.rehearsal.model import RehearsedSession, RehearsedSet

BAND = "#e4e4e4"
KEPT_STEP = 25


def clock_panel(
    board: Canvas, lived: RehearsedSession, left: float, top: float, width: float, height: float
) -> None:
    """Every working set on the clock, by the share of the fresh repetitions that is left.

    Args:
        board: to draw on.
        lived: the rehearsed session.
        left: of the panel, points.
        top: of the panel.
        width: of the panel.
        height: of the panel.
    """
    kept = {id(one): 100 * min(one.possible / max(one.fresh, 1.0), 1.0) for one in lived.sets}
    floor = KEPT_STEP * int(max(min(kept.values()) - 5, 0) // KEPT_STEP)
    x = Scale(0, lived.total_s / 60, left, left + width)
    y = Scale(floor, 106, top + height, top)
    board.text(left, top - 4, "performance kept, % of a fresh person's repetitions", SIZE, ink=SOFT)
    for tick in range(floor, 101, KEPT_STEP):
        board.line([(left, y(tick)), (left + width, y(tick))], FAINT, 0.5)
        board.text(left - 4, y(tick) + 2.6, f"{tick}", anchor="end")
    board.line([(left, top), (left, top + height), (left + width, top + height)], SOFT)
    for minute in ticks(0, lived.total_s / 60, 10):
        board.line([(x(minute), top + height), (x(minute), top + height + 2.5)], SOFT)
        board.text(x(minute), top + height + 10.5, f"{minute:g}", anchor="middle")
    board.text(left + width, top + height + 19.5, "minutes", SIZE, "end", SOFT)
    for position in dict.fromkeys(one.entry for one in lived.sets):
        sets = [one for one in lived.sets if one.entry == position]
        places = [(x((one.start_s + one.work_s / 2) / 60), y(kept[id(one)])) for one in sets]
        if len(places) > 1:
            board.line(places, SOFT)
        for number, (across, up) in enumerate(places):
            board.dot(across, up, 4.4, PAPER, INK, 0.6 if number else 1.3)
            board.text(across, up + 1.9, str(position + 1), 5.2, "middle")


def exercise_panel(
    board: Canvas, number: int, entry: Entry, sets: Sequence[RehearsedSet],
    left: float, top: float, width: float, height: float,
) -> None:  # fmt: skip
    """Repetitions of one exercise set after set.

    Args:
        board: to draw on.
        number: place of the exercise in its session, from 1.
        entry: the exercise as planned.
        sets: its rehearsed working sets in order.
        left: of the panel, points.
        top: of the panel.
        width: of the panel.
        height: of the panel.
    """
    most = max(entry.reps[1], *(max(one.possible_high, one.fresh, one.reps) for one in sets))
    x = Scale(0.5, len(sets) + 0.5, left, left + width)
    y = Scale(0, most * 1.06, top + height, top)
    low, high = entry.reps
    board.box(left, y(high + 0.15), width, y(low - 0.15) - y(high + 0.15), BAND)
    for tick in ticks(0, most, 4):
        board.line([(left, y(tick)), (left + width, y(tick))], FAINT, 0.5)
        board.text(left - 4, y(tick) + 2.6, f"{tick:g}", anchor="end")
    board.line([(left, top), (left, top + height), (left + width, top + height)], SOFT)
    fresh = y(sets[0].fresh)
    board.line([(left, fresh), (left + width, fresh)], SOFT, 0.7, "3 2.5")
    half = min(width / len(sets) * 0.22, 9)
    for one in sets:
        across = x(one.number)
        board.line([(across, y(one.possible_low)), (across, y(one.possible_high))], SOFT, 1.0)
        board.line([(across - half, y(one.reps)), (across + half, y(one.reps))], INK, 2.0)
        board.dot(across, y(one.possible), 2.3)
        board.text(across, top + height + 9, str(one.number), anchor="middle")
    name = f"{number}{entry.superset or ''} {catalogue.exercise(entry.exercise).name}"
    board.text(left, top - 14, shortened(name, min(width + 20, board.width - left), SIZE), SIZE)
    said = "one set" if len(sets) < 2 else f"keeps {worst_kept(sets)[1]:.0%} of its first set"
    board.text(left, top - 5, said, SIZE - 0.7, ink=SOFT)
