"""A small drawing board: shapes and words in points, written as SVG.

The pictures of documents are drawn with it: they are light, their words stay words, and the same
drawing goes to paper, page and file. Greys only; the ids inside a picture begin with its name, so
that several may stand in one page.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from math import floor, log10
from typing import Literal
from xml.sax.saxutils import escape, quoteattr

from setwright.handout.letter_widths import measured

INK, SOFT, FAINT, PAPER = "#1a1a1a", "#595959", "#d0d0d0", "#ffffff"
FONT = "DejaVu Sans, Verdana, sans-serif"
SIZE = 7.5
# Letters that XML does not know.
FORBIDDEN = re.compile("[\x00-\x1f\ud800-\udfff\ufffe\uffff]")
Anchor = Literal["start", "middle", "end"]
Hatch = Literal["below", "above"]
Point = tuple[float, float]


class Canvas:
    """A sheet that shapes are put on, x to the right and y down, in points."""

    def __init__(self, name: str, width: float, height: float) -> None:
        """Make an empty sheet.

        Args:
            name: of the picture; letters, digits and hyphens.
            width: points.
            height: points.
        """
        self.name, self.width, self.height = name, width, height
        self._shapes: list[str] = []

    def line(
        self, points: Sequence[Point], ink: str = INK, width: float = 0.7, dash: str = ""
    ) -> None:
        """A line through two or more points."""
        at = " ".join(f"{_n(x)},{_n(y)}" for x, y in points)
        dashed = f' stroke-dasharray="{dash}"' if dash else ""
        self._shapes.append(
            f'<polyline points="{at}" fill="none" stroke="{ink}" '
            f'stroke-width="{_n(width)}"{dashed}/>'
        )

    def area(self, points: Sequence[Point], fill: str) -> None:
        """A filled outline without an edge."""
        at = " ".join(f"{_n(x)},{_n(y)}" for x, y in points)
        self._shapes.append(f'<polygon points="{at}" fill="{fill}"/>')

    def box(
        self, x: float, y: float, width: float, height: float, fill: str = PAPER,
        edge: str = "none", hatch: Hatch | None = None,
    ) -> None:  # fmt: skip
        """A rectangle by its upper left corner."""
        shown = f"url(#{self.name}-{hatch})" if hatch else fill
        self._shapes.append(
            f'<rect x="{_n(x)}" y="{_n(y)}" width="{_n(max(width, 0))}" '
            f'height="{_n(max(height, 0))}" fill="{shown}" stroke="{edge}" stroke-width="0.6"/>'
        )

    def dot(
        self, x: float, y: float, radius: float, fill: str = INK, edge: str = INK,
        width: float = 0.7,
    ) -> None:  # fmt: skip
        """A circle."""
        self._shapes.append(
            f'<circle cx="{_n(x)}" cy="{_n(y)}" r="{_n(radius)}" fill="{fill}" stroke="{edge}" '
            f'stroke-width="{_n(width)}"/>'
        )

    def text(
        self, x: float, y: float, words: str, size: float = SIZE, anchor: Anchor = "start",
        ink: str = INK, bold: bool = False, turned: bool = False,
    ) -> None:  # fmt: skip
        """Words on a baseline that begins, has its middle or ends at a point."""
        weight = ' font-weight="bold"' if bold else ""
        turn = f' transform="rotate(-90 {_n(x)} {_n(y)})"' if turned else ""
        clean = FORBIDDEN.sub("", words)
        self._shapes.append(
            f'<text x="{_n(x)}" y="{_n(y)}" font-size="{_n(size)}" text-anchor="{anchor}" '
            f'fill="{ink}"{weight}{turn}>{escape(clean)}</text>'
        )

    def svg(self) -> str:
        """The picture."""
        head = (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{_n(self.width)}pt" '
            f'height="{_n(self.height)}pt" viewBox="0 0 {_n(self.width)} {_n(self.height)}" '
            f"font-family={quoteattr(FONT)}>"
        )
        return "".join([head, self._hatches(), *self._shapes, "</svg>"])

    def _hatches(self) -> str:
        found = "".join(
            f'<pattern id="{self.name}-{name}" width="4" height="4" patternUnits="userSpaceOnUse">'
            f'<rect width="4" height="4" fill="{PAPER}"/>{ink}</pattern>'
            for name, ink in (
                (
                    "below",
                    f'<path d="M-1,1 l2,-2 M0,4 l4,-4 M3,5 l2,-2" stroke="{SOFT}" '
                    'stroke-width="0.8"/>',
                ),
                (
                    "above",
                    f'<circle cx="1" cy="1" r="0.7" fill="{SOFT}"/>'
                    f'<circle cx="3" cy="3" r="0.7" fill="{SOFT}"/>',
                ),
            )
            if any(f"url(#{self.name}-{name})" in shape for shape in self._shapes)
        )
        return f"<defs>{found}</defs>" if found else ""


@dataclass(frozen=True)
class Scale:
    """A straight scale from figures to points.

    Attributes:
        low: figure at ``start``.
        high: figure at ``end``; another one than ``low``.
        start: points.
        end: points.
    """

    low: float
    high: float
    start: float
    end: float

    def __call__(self, value: float) -> float:
        """Where a figure stands."""
        return self.start + (value - self.low) / (self.high - self.low) * (self.end - self.start)


def ticks(low: float, high: float, most: int = 6) -> tuple[float, ...]:
    """Round figures within a span, at most so many and a few less.

    >>> ticks(0, 23, 5)
    (0.0, 5.0, 10.0, 15.0, 20.0)
    """
    rough = max(high - low, 1e-9) / max(most, 1)
    base = 10.0 ** floor(log10(rough))
    step = next(base * by for by in (1, 2, 2.5, 5, 10) if base * by >= rough * (1 - 1e-9))
    first = -floor(-low / step + 1e-9)
    last = floor(high / step + 1e-9)
    return tuple(round(at * step, 9) for at in range(first, last + 1))


def shortened(words: str, width: float, size: float = SIZE, bold: bool = False) -> str:
    """Words cut to a room in points, with a mark where they were cut."""
    if measured(words, size, bold) <= width:
        return words
    kept = words
    while kept and measured(f"{kept}…", size, bold) > width:
        kept = kept[:-1]
    return f"{kept.rstrip()}…"


def _n(value: float) -> str:
    return f"{value:.2f}".rstrip("0").rstrip(".") if value else "0"
