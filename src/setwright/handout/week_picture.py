"""The week as a picture: days side by side on one scale of minutes."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.handout.canvas import FAINT, INK, PAPER, SOFT, Canvas, shortened
from setwright.handout.letter_widths import measured
from setwright.handout.timeline import Block, blocks
from setwright.handout.week_blocks import GROUND, SIZE, WORK, Column, draw_block, write_block
from setwright.plan.week import Plan, Session
from setwright.rehearsal.model import Rehearsal, RehearsedSession

COLUMN, NARROWEST = 170.0, 320.0
LEFT, RIGHT, TOP, BOTTOM = 34.0, 8.0, 58.0, 34.0
MINUTE = 9.7
ROOM_BELOW_MIN = 2.5
LANES_A_COLUMN = 2
GAP = 0.07
TITLE_SIZE, DAY_SIZE = 11.0, 9.0
# Baselines: of the title from the top, of the day and the session's name above the columns, of the
# minutes to be had below them.
TITLE_AT, DAY_ABOVE, NAME_ABOVE, HAD_BELOW = 16.0, 17.0, 6.0, 9.0
BETWEEN = 6.0
TICK_MIN = 10


def week_picture(
    plan: Plan,
    rehearsal: Rehearsal,
    width: float | None = None,
    height: float | None = None,
    name: str = "week",
) -> str:
    """Each session a column, as SVG; exercises to scale, superset partners side by side.

    In a block the dark marks are working sets, the hatched band is warm-up, the dotted strip at
    its top is the change-over, and the ground between the marks is rest.

    Args:
        plan: the week.
        rehearsal: the same week, rehearsed.
        width: of the whole picture, points; None gives every day its usual width.
        height: the most it may be high, points; long sessions are drawn on a smaller scale then,
            with words of the same size.
        name: of the picture, which no other one on its page has.
    """
    days = list(zip(plan.sessions, rehearsal.sessions, strict=True))
    drawn = [blocks(session, lived) for session, lived in days]
    minutes = ROOM_BELOW_MIN + max(
        max(lived.total_s / 60, session.minutes or 0) for session, lived in days
    )
    lanes = max(len(block.lanes) for row in drawn for block in row)
    each = COLUMN * max(1.0, lanes / LANES_A_COLUMN)
    if width is not None:
        each = (width - LEFT - RIGHT) / len(days)
    minute = MINUTE if height is None else min(MINUTE, (height - TOP - BOTTOM) / minutes)
    board = Canvas(
        name,
        max(LEFT + each * len(days) + RIGHT, NARROWEST),
        TOP + minute * minutes + BOTTOM,
    )
    title = shortened(plan.title, board.width - LEFT - RIGHT, TITLE_SIZE, bold=True)
    board.text(LEFT, TITLE_AT, title, TITLE_SIZE, bold=True)
    _scale(board, minutes, minute, LEFT + each * len(days))
    for number, ((session, lived), row) in enumerate(zip(days, drawn, strict=True)):
        left = LEFT + number * each
        column = Column(left + GAP / 2 * each, (1 - GAP) * each, TOP, minute)
        _day(board, column, session, lived, row)
    _key(board)
    return board.svg()


def _scale(board: Canvas, minutes: float, minute: float, right: float) -> None:
    """Minutes down the left side."""
    board.text(LEFT - 4, TOP - NAME_ABOVE, "min", SIZE, "end", SOFT)
    for tick in range(0, int(minutes) + 1, TICK_MIN):
        y = TOP + tick * minute
        board.line([(LEFT, y), (right, y)], FAINT, 0.5)
        board.text(LEFT - 4, y + 2.6, f"{tick}", SIZE, "end")


def _day(
    board: Canvas, column: Column, session: Session, lived: RehearsedSession, row: Sequence[Block]
) -> None:
    board.text(column.left, TOP - DAY_ABOVE, session.day.capitalize(), DAY_SIZE, bold=True)
    total = f"{lived.total_s / 60:.0f} min"
    room = column.width - measured(total, SIZE) - BETWEEN
    board.text(column.left, TOP - NAME_ABOVE, shortened(session.name, room, SIZE), SIZE)
    board.text(column.right, TOP - NAME_ABOVE, total, SIZE, "end")
    for block in row:
        draw_block(board, column, block)
    if session.minutes is not None:
        y = column.y(60 * session.minutes)
        board.line([(column.left - 3, y), (column.right + 3, y)], INK, 1.6)
        below = max(y, column.y(lived.total_s)) + HAD_BELOW
        board.text(column.right, below, f"{session.minutes} min to be had", SIZE, "end", SOFT)
    for block in row:
        write_block(board, column, session, block)


def _key(board: Canvas) -> None:
    """What the shapes mean, in as many rows as the width asks for."""
    x, y = LEFT, board.height - BOTTOM + 16
    for words in ("working set", "rest", "warm-up", "change-over", "minutes to be had"):
        wide = 20 + measured(words, SIZE) + 12
        if x > LEFT and x + wide - 12 > board.width:
            x, y = LEFT, y + 12
        if words == "warm-up":
            board.box(x, y - 6, 15, 6.5, PAPER, SOFT, "below")
        elif words == "change-over":
            board.box(x, y - 6, 15, 6.5, PAPER, SOFT, "above")
        elif words == "minutes to be had":
            board.line([(x, y - 2.7), (x + 15, y - 2.7)], INK, 1.6)
        else:
            board.box(x, y - 6, 15, 6.5, WORK if words == "working set" else GROUND, INK)
        board.text(x + 20, y, words, SIZE)
        x += wide
