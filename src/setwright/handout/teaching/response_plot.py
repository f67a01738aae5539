"""The dose-response curve with a person's own parts on it."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from setwright.anatomy.atlas import index, muscles, part
from setwright.audit.context import Context
from setwright.handout.canvas import FAINT, INK, PAPER, SIZE, SOFT, Canvas, Scale, shortened, ticks
from setwright.response.curves import dose_shape, week_growth
from setwright.response.factors import drawn, people
from setwright.response.growth import HIGH, LOW
from setwright.response.person import rate
from setwright.response.targets import bands

DRAWS, STEPS = 400, 60
BAND = "#e4e4e4"
WIDTH, LEFT, RIGHT, TOP, FOOT = 520.0, 118.0, 8.0, 16.0, 30.0
# Height of the curve with the strip below it, and without.
TALL, FLAT = 170.0, 112.0
NO_NAMES = 34.0
ROW, STRIP_TOP = 10.4, 14.0
Floats = NDArray[np.floating]


def curve(context: Context, most: float) -> tuple[Floats, Floats, Floats, Floats]:
    """Growth over effective weekly sets: sets, central, and the 80 % interval between people.

    Args:
        context: the week and the person.
        most: largest dose, effective sets a week.

    Returns:
        Four arrays of one length; growth in percent of size a week.
    """
    sets = np.linspace(0, most, STEPS)
    seed = context.intake.seed if context.intake else 1
    rng = np.random.default_rng(seed)
    c = {name: values[:, None] for name, values in drawn(DRAWS, rng).items()}
    own = rng.permutation(people(DRAWS))[:, None]
    growth = rate(context.person, c) * own * dose_shape(sets[None, :], c)
    low, high = np.quantile(growth, (LOW, HIGH), axis=0)
    return sets, week_growth(sets, context.person), low, high


def response_plot(context: Context, strip: bool = True, name: str = "response") -> str:
    """Expected growth over effective sets a week, each part a dot, as SVG.

    Args:
        context: the week.
        strip: below the curve, the same dots by muscle.
        name: of the picture.
    """
    asked = bands(context.intake)
    wanted = tuple(ident for ident in index() if asked[ident].least > 0)
    effective = context.response.effective_sets
    rows = _rows(context, wanted)
    most = max(12.0, float(effective.max()) * 1.05)
    sets, middle, low, high = curve(context, most)
    left, room = (LEFT, TALL) if strip else (NO_NAMES, FLAT)
    foot = TOP + room
    height = foot + FOOT + (STRIP_TOP + ROW * len(rows) + 4 if strip else 0)
    board = Canvas(name, WIDTH, height)
    x = Scale(0, most, left, WIDTH - RIGHT)
    y = Scale(0, float(high.max()) * 1.04, foot, TOP)
    board.area(
        [*((x(a), y(b)) for a, b in zip(sets, high, strict=True)),
         *((x(a), y(b)) for a, b in zip(sets[::-1], low[::-1], strict=True))],
        BAND,
    )  # fmt: skip
    for tick in ticks(0, float(high.max()), 5):
        board.line([(left, y(tick)), (WIDTH - RIGHT, y(tick))], FAINT, 0.5)
        board.text(left - 4, y(tick) + 2.6, f"{tick:g}", anchor="end")
    board.text(left, 9, "expected growth, % of size a week", SIZE, ink=SOFT)
    board.line([(x(a), y(b)) for a, b in zip(sets, middle, strict=True)], INK, 1.4)
    for ident in wanted:
        at = float(effective[index()[ident]])
        board.dot(x(at), y(float(np.interp(at, sets, middle))), 2.6, PAPER, INK, 1.0)
    board.line([(left, TOP), (left, foot), (WIDTH - RIGHT, foot)], SOFT)
    for tick in ticks(0, most, 10):
        board.text(x(tick), foot + 10.5, f"{tick:g}", anchor="middle")
    board.text(WIDTH - RIGHT, foot + 21, "effective sets a week", SIZE, "end", SOFT)
    if strip:
        _strip(board, rows, x, foot + FOOT + STRIP_TOP)
    return board.svg()


def _rows(context: Context, wanted: tuple[str, ...]) -> list[tuple[str, list[float]]]:
    """Muscles asked for with the effective sets of their parts, the least trained last."""
    found: dict[str, list[float]] = {}
    for ident, column in index().items():
        if ident in wanted:
            sets = float(context.response.effective_sets[column])
            found.setdefault(part(ident).muscle, []).append(sets)
    named = [(muscles()[ident].name, sets) for ident, sets in found.items()]
    return sorted(named, key=lambda row: (-max(row[1]), row[0]))


def _strip(board: Canvas, rows: list[tuple[str, list[float]]], x: Scale, top: float) -> None:
    for tick in ticks(0, x.high, 10):
        board.line([(x(tick), top - 4), (x(tick), top + ROW * len(rows))], FAINT, 0.5)
    for number, (name, sets) in enumerate(rows):
        y = top + ROW * number + ROW / 2
        board.text(LEFT - 6, y + 2.4, shortened(name, LEFT - 12), SIZE, "end")
        board.line([(x(min(sets)), y), (x(max(sets)), y)], SOFT, 0.7)
        for one in sets:
            board.dot(x(one), y, 2.3, PAPER, INK, 1.0)
