"""A rehearsed session as a picture: performance kept on the clock, repetitions set after set."""

from __future__ import annotations

from collections.abc import Sequence
from textwrap import wrap

from setwright.handout.canvas import SIZE, SOFT, Canvas, shortened
from setwright.handout.rehearsal_panel import clock_panel, exercise_panel
from setwright.handout.wording import heading
from setwright.plan.week import Plan
from setwright.rehearsal.model import Rehearsal

COLUMNS = 3
WIDTH, LEFT, RIGHT = 520.0, 26.0, 6.0
TITLE, CLOCK, CLOCK_FOOT = 40.0, 58.0, 24.0
NAME, PANEL, PANEL_FOOT, GAP = 27.0, 54.0, 14.0, 30.0
EDGE, KEY_LINE, KEY_LETTERS = 6.0, 10.0, 120
KEY = (
    "dot: repetitions to failure at that point, line through it: 80 % interval between people; "
    "bar: repetitions to be done; grey: the planned band; dashes: what a fresh person could do"
)


def rehearsal_picture(
    plan: Plan,
    rehearsal: Rehearsal,
    sessions: Sequence[int] | None = None,
    name: str = "rehearsal",
    with_key: bool = True,
) -> str:
    """Sessions one below the other, as SVG.

    Above, every working set where it stands on the clock, by what is kept of the fresh person's
    repetitions; the figures are the exercises. Below, a panel an exercise with the repetitions
    that will be possible on each set.

    Args:
        plan: the week.
        rehearsal: the same week, rehearsed.
        sessions: which of its sessions, from 0; all when None.
        name: of the picture.
        with_key: say below how to read it.
    """
    chosen = range(len(plan.sessions)) if sessions is None else sessions
    heights = [_height(len(plan.sessions[number].exercises)) for number in chosen]
    key = wrap(KEY, KEY_LETTERS) if with_key else []
    board = Canvas(name, WIDTH, EDGE + sum(heights) + KEY_LINE * len(key) + EDGE)
    top = EDGE
    for number, height in zip(chosen, heights, strict=True):
        _session(board, plan, rehearsal, number, top)
        top += height
    for at, words in enumerate(key):
        board.text(EDGE, top + 8 + KEY_LINE * at, words, SIZE, ink=SOFT)
    return board.svg()


def _height(exercises: int) -> float:
    rows = -(-exercises // COLUMNS)
    return TITLE + CLOCK + CLOCK_FOOT + rows * (NAME + PANEL + PANEL_FOOT)


def _session(board: Canvas, plan: Plan, rehearsal: Rehearsal, number: int, top: float) -> None:
    session, lived = plan.sessions[number], rehearsal.sessions[number]
    minutes = (
        f"{lived.total_s / 60:.0f} min (80 % interval {lived.low_s / 60:.0f} to "
        f"{lived.high_s / 60:.0f})"
    )
    board.text(
        EDGE, top + 12, shortened(heading(session), WIDTH - 170, 10.5, True), 10.5, bold=True
    )
    board.text(WIDTH - RIGHT, top + 12, minutes, SIZE + 0.5, "end")
    room = WIDTH - LEFT - RIGHT
    clock_panel(board, lived, LEFT, top + TITLE - 8, room, CLOCK)
    first = top + TITLE + CLOCK + CLOCK_FOOT
    width = (room - (COLUMNS - 1) * GAP) / COLUMNS
    for position, entry in enumerate(session.exercises):
        row, column = divmod(position, COLUMNS)
        exercise_panel(
            board,
            position + 1,
            entry,
            [one for one in lived.sets if one.entry == position],
            LEFT + column * (width + GAP),
            first + row * (NAME + PANEL + PANEL_FOOT) + NAME - 8,
            width,
            PANEL,
        )
