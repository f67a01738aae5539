"""What was traded: minutes against expected growth."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.handout.canvas import (
    FAINT,
    INK,
    PAPER,
    SIZE,
    SOFT,
    Canvas,
    Point,
    Scale,
    shortened,
    ticks,
)
from setwright.handout.letter_widths import measured
from setwright.handout.teaching.trials import Trial
from setwright.handout.wording import changed

# Left, top, right, bottom.
Box = tuple[float, float, float, float]
WIDTH, EDGE = 520.0, 6.0
ROW, HEAD, FOOT = 11.4, 26.0, 10.0
NAMES, FIGURES = 176.0, 92.0
PLOT_TOP, PLOT_LEFT = 16.0, 34.0
# Width of the key beside the plot, and height of a line in it.
KEY, KEY_LINE = 182.0, 11.5
TALL, FLAT = 190.0, 132.0
# Fewer minutes saved than this are none.
LEAST_MINUTES = 0.5
AS_IT_STANDS = "as it stands"
# Where the middle of a label may stand beside its dot, the first choice first.
OFFSETS = (
    (7, 0), (-7, 0), (6, -6), (-6, -6), (6, 6), (-6, 6), (4, -10), (-4, -10), (4, 10), (-4, 10),
    (11, 0), (-11, 0), (10, -10), (-10, -10), (10, 10), (-10, 10),
)  # fmt: skip


def per_ten_minutes(trial: Trial) -> float:
    """Growth lost for every ten minutes saved, as a part of the week's growth.

    A change that saves next to nothing is counted as saving the least that is worth a word.
    """
    return trial.growth / min(trial.minutes, -LEAST_MINUTES) * 10


def worth_plot(rows: Sequence[tuple[str, Trial]], name: str = "worth") -> str:
    """Each exercise left out in turn: growth lost, with its interval, and minutes saved, as SVG.

    Args:
        rows: what to call an exercise, and the week without it; the order is kept.
        name: of the picture.
    """
    board = Canvas(name, WIDTH, HEAD + ROW * len(rows) + FOOT)
    lost = [(-100 * one.growth, -100 * one.high, -100 * one.low) for _, one in rows]
    room = WIDTH - 2 * EDGE - NAMES - FIGURES
    saved_at = EDGE + NAMES + room * 0.62 + 16
    x = Scale(0, max(max(high for _, _, high in lost), 0.1) * 1.03, EDGE + NAMES, saved_at - 16)
    saved = Scale(
        0, max(max(-one.minutes for _, one in rows), 1.0) * 1.03, saved_at,
        WIDTH - EDGE - FIGURES,
    )  # fmt: skip
    foot = HEAD + ROW * len(rows)
    for scale, most in ((x, 5), (saved, 4)):
        for tick in ticks(0, scale.high, most):
            board.line([(scale(tick), HEAD), (scale(tick), foot)], FAINT, 0.5)
            board.text(scale(tick), HEAD - 3, f"{tick:g}", SIZE - 0.5, "middle")
    board.text(x.start, 10, "growth lost without it, % of the week's", SIZE - 0.3, ink=SOFT)
    board.text(saved_at, 10, "minutes saved", SIZE - 0.3, ink=SOFT)
    board.text(WIDTH - EDGE, 10, "lost in 10 min saved", SIZE - 0.3, "end", SOFT)
    for number, ((words, one), (middle, low, high)) in enumerate(zip(rows, lost, strict=True)):
        y = HEAD + ROW * number + ROW / 2
        board.text(EDGE + NAMES - 6, y + 2.5, shortened(words, NAMES - 8), SIZE, "end")
        board.line([(x(max(low, 0)), y), (x(high), y)], SOFT, 1.0)
        board.dot(x(middle), y, 2.4)
        board.box(saved_at, y - 2.4, saved(max(-one.minutes, 0)) - saved_at, 4.8, "#bfbfbf", SOFT)
        price = f"{changed(-100 * per_ten_minutes(one)).lstrip('+-')} %"
        shown = price if one.minutes < -LEAST_MINUTES else "no time saved"
        board.text(WIDTH - EDGE, y + 2.5, shown, SIZE, "end")
    return board.svg()


def week_plot(
    trials: Sequence[Trial], minutes: float, height: float = TALL, name: str = "trade"
) -> str:
    """The week with one rule changed everywhere: minutes across, growth up, as SVG.

    Args:
        trials: the changed weeks, numbered in the picture; a key beside it names them.
        minutes: of the week as it stands.
        height: of the plot, points.
        name: of the picture.
    """
    board = Canvas(name, WIDTH, PLOT_TOP + height + 30)
    bottom, right = PLOT_TOP + height, WIDTH - EDGE - KEY
    across = [minutes, *(minutes + one.minutes for one in trials)]
    up = [100.0, *(100 * (1 + end) for one in trials for end in (one.low, one.high))]
    wide, tall = max(max(across) - min(across), 10.0), max(max(up) - min(up), 1.0)
    x = Scale(min(across) - 0.06 * wide, max(across) + 0.06 * wide, PLOT_LEFT, right)
    y = Scale(min(up) - 0.06 * tall, max(up) + 0.06 * tall, bottom, PLOT_TOP)
    for tick in ticks(y.low, y.high, 6):
        board.line([(PLOT_LEFT, y(tick)), (right, y(tick))], FAINT, 0.5)
        board.text(PLOT_LEFT - 4, y(tick) + 2.6, f"{tick:g}", anchor="end")
    for tick in ticks(x.low, x.high, 8):
        board.text(x(tick), bottom + 10.5, f"{tick:g}", anchor="middle")
        board.line([(x(tick), bottom), (x(tick), bottom + 2.5)], SOFT)
    board.line([(PLOT_LEFT, PLOT_TOP), (PLOT_LEFT, bottom), (right, bottom)], SOFT)
    board.text(PLOT_LEFT, 9, "expected growth, % of the week as it stands", SIZE, ink=SOFT)
    board.text(right, bottom + 21, "minutes a week", SIZE, "end", SOFT)
    now = x(minutes), y(100)
    places = [(x(minutes + one.minutes), y(100 * (1 + one.growth))) for one in trials]
    spans: list[Box] = []
    for one, (px, _) in zip(trials, places, strict=True):
        low, high = y(100 * (1 + one.low)), y(100 * (1 + one.high))
        board.line([(px, low), (px, high)], "#a6a6a6", 1.0)
        spans.append((px - 1, high, px + 1, low))
    for px, py in places:
        board.dot(px, py, 2.6, PAPER, INK, 1.0)
    board.dot(*now, 3.4)
    labels = [str(number) for number in range(1, len(trials) + 1)]
    for words, (lx, ly) in zip(labels, _beside(labels, [*places, now], spans), strict=True):
        board.text(lx, ly, words, SIZE, "middle")
    _key(board, trials, right + 16)
    return board.svg()


def _key(board: Canvas, trials: Sequence[Trial], left: float) -> None:
    board.dot(left + 3.4, PLOT_TOP + 3, 3.4)
    board.text(left + 14, PLOT_TOP + 5.5, AS_IT_STANDS, SIZE, bold=True)
    for number, one in enumerate(trials, start=1):
        y = PLOT_TOP + 5.5 + number * KEY_LINE
        board.text(left + 7, y, str(number), SIZE, "end")
        board.text(left + 14, y, shortened(one.name, WIDTH - left - 14), SIZE)


def _beside(labels: Sequence[str], spots: Sequence[Point], spans: Sequence[Box]) -> list[Point]:
    """Where each label has its middle, beside its spot and clear of spots and other labels.

    Args:
        labels: in the order of their spots.
        spots: one a label, and any others that must stay clear.
        spans: lines that must stay clear.
    """
    taken: list[Box] = [*spans, *((px - 3, py - 3, px + 3, py + 3) for px, py in spots)]
    found = []
    for words, (px, py) in zip(labels, spots, strict=False):
        half = measured(words, SIZE) / 2
        boxes = [(px + dx - half, py + dy - 3, px + dx + half, py + dy + 3) for dx, dy in OFFSETS]
        clear = (one for one in boxes if not any(_overlap(one, other) for other in taken))
        box = next(clear, boxes[0])
        taken.append(box)
        found.append(((box[0] + box[2]) / 2, box[3] - 0.3))
    return found


def _overlap(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]
