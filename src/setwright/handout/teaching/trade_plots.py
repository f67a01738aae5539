"""What was traded: minutes against expected growth."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.handout.canvas import (
    FAINT,
    INK,
    PAPER,
    SIZE,
    SOFT,
    Anchor,
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
TALL, FLAT = 190.0, 132.0
# Fewer minutes saved than this are none.
LEAST_MINUTES = 0.5
AS_IT_STANDS = "as it stands"
# Where a label may stand beside its dot, the first choice first.
OFFSETS = (
    (8, 0), (-8, 0), (10, -13), (10, 13), (-10, -13), (-10, 13), (16, 26), (16, -26), (-16, 26),
    (-16, -26), (22, 39), (22, -39), (-22, 39), (-22, -39), (28, 52),
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
        trials: the changed weeks.
        minutes: of the week as it stands.
        height: of the plot, points.
        name: of the picture.
    """
    board = Canvas(name, WIDTH, PLOT_TOP + height + 30)
    across = [minutes, *(minutes + one.minutes for one in trials)]
    up = [
        100.0,
        *(100 * (1 + one.low) for one in trials),
        *(100 * (1 + one.high) for one in trials),
    ]
    span = max(max(across) - min(across), 10)
    x = Scale(min(across) - 0.1 * span, max(across) + 0.3 * span, PLOT_LEFT, WIDTH - EDGE)
    high = max(max(up) - min(up), 1.0)
    bottom = PLOT_TOP + height
    y = Scale(min(up) - 0.06 * high, max(up) + 0.06 * high, bottom, PLOT_TOP)
    for tick in ticks(y.low, y.high, 6):
        board.line([(PLOT_LEFT, y(tick)), (WIDTH - EDGE, y(tick))], FAINT, 0.5)
        board.text(PLOT_LEFT - 4, y(tick) + 2.6, f"{tick:g}", anchor="end")
    for tick in ticks(x.low, x.high, 8):
        board.text(x(tick), bottom + 10.5, f"{tick:g}", anchor="middle")
        board.line([(x(tick), bottom), (x(tick), bottom + 2.5)], SOFT)
    board.line([(PLOT_LEFT, PLOT_TOP), (PLOT_LEFT, bottom), (WIDTH - EDGE, bottom)], SOFT)
    board.text(PLOT_LEFT, 9, "expected growth, % of the week as it stands", SIZE, ink=SOFT)
    board.text(WIDTH - EDGE, bottom + 21, "minutes a week", SIZE, "end", SOFT)
    places = [(x(minutes + one.minutes), y(100 * (1 + one.growth))) for one in trials]
    for one, (px, _) in zip(trials, places, strict=True):
        board.line([(px, y(100 * (1 + one.low))), (px, y(100 * (1 + one.high)))], "#a6a6a6", 1.0)
    for px, py in places:
        board.dot(px, py, 2.6, PAPER, INK, 1.0)
    board.dot(x(minutes), y(100), 3.4)
    named = [AS_IT_STANDS, *(one.name for one in trials)]
    spots = [(x(minutes), y(100)), *places]
    whiskers = [
        (px - 1, y(100 * (1 + one.high)), px + 1, y(100 * (1 + one.low)))
        for one, (px, _) in zip(trials, places, strict=True)
    ]
    labels = _labels(named, spots, whiskers)
    for words, (px, py), (lx, ly, anchor) in zip(named, spots, labels, strict=True):
        if abs(ly - py) > SIZE:
            board.line([(px, py + (3 if ly > py else -3)), (lx, ly - 2.5)], SOFT, 0.5)
        board.text(lx, ly, words, SIZE, anchor, bold=words == AS_IT_STANDS)
    return board.svg()


def _labels(
    words: Sequence[str], spots: Sequence[Point], lines: Sequence[Box]
) -> list[tuple[float, float, Anchor]]:
    """Where each label stands so that it covers no dot, no line and no other label.

    The nearest of a few places is taken; a label that fits nowhere stands in the last of them.
    """
    taken = [*lines, *((px - 4, py - 4, px + 4, py + 4) for px, py in spots)]
    found: list[tuple[float, float, Anchor]] = []
    for said, (px, py) in zip(words, spots, strict=True):
        wide = measured(said, SIZE, bold=said == AS_IT_STANDS)
        box = (0.0, 0.0, 0.0, 0.0)
        place: tuple[float, float, Anchor] = (px, py, "start")
        for dx, dy in OFFSETS:
            anchor: Anchor = "start" if dx > 0 else "end"
            left = px + dx if dx > 0 else px + dx - wide
            place = (px + dx, py + dy + 2.5, anchor)
            box = (left, py + dy - 5, left + wide, py + dy + 4)
            inside = left > PLOT_LEFT and left + wide < WIDTH and py + dy > PLOT_TOP
            if inside and not any(_overlap(box, other) for other in taken):
                break
        taken.append(box)
        found.append(place)
    return found


def _overlap(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]
