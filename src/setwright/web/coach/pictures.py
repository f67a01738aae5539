"""Pictures of a client's log as SVG, kept as long as the log stays the same."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta
from io import BytesIO
from threading import Lock
from typing import TYPE_CHECKING

from setwright.training.client import Client as Trained
from setwright.training.facts.attendance import weeks_kept
from setwright.training.strength_now import strength_now
from setwright.web.coach.content import Content
from setwright.web.memory import Kept

if TYPE_CHECKING:
    from matplotlib.figure import Figure

WEEKS = 12
_PICTURES: Kept[bytes] = Kept(256)
# Matplotlib's settings belong to the whole process.
_DRAWING = Lock()


def strength_svg(client: Trained, content: Content, today: date) -> bytes:
    """The course of strength with its intervals; empty when nothing is known yet."""

    def draw() -> Figure | None:
        from setwright.handout.strength_picture import strength_lines, strength_picture

        lines = strength_lines(client, [row.exercise for row in strength_now(client)])
        return strength_picture("Strength", lines) if lines else None

    return _PICTURES.of(("strength", content, today), lambda: _svg(draw))


def done_svg(client: Trained, content: Content, today: date) -> bytes:
    """Sets and sessions done against planned; empty before the first plan."""

    def draw() -> Figure | None:
        from setwright.handout.done_picture import done_picture

        weeks = weeks_kept(client, today - timedelta(today.weekday()), WEEKS)
        return done_picture("Planned and done", weeks) if weeks else None

    return _PICTURES.of(("done", content, today), lambda: _svg(draw))


def _svg(draw: Callable[[], Figure | None]) -> bytes:
    from matplotlib import rc_context

    from setwright.handout.drawing import STYLE

    with _DRAWING:
        figure = draw()
        if figure is None:
            return b""
        into = BytesIO()
        with rc_context(STYLE):  # type: ignore[arg-type]
            figure.savefig(into, format="svg", metadata={"Date": None})
        return into.getvalue()
