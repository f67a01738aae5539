"""How our pictures look, and how they are saved. Matplotlib is loaded only when one is drawn."""

from __future__ import annotations

from io import BytesIO
from pathlib import Path
from textwrap import wrap
from typing import TYPE_CHECKING, Any

from setwright.documents.errors import DocumentError, Fault

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

INK = "0.1"
SOFT = "0.45"
FAINT = "0.8"
PAPER = "white"
DPI = 150
# Mean width of a letter over its size, measured generously for a book face.
LETTER = 0.56
STYLE = {
    "font.family": "DejaVu Serif",
    "font.size": 9,
    "axes.edgecolor": SOFT,
    "axes.linewidth": 0.6,
    "hatch.linewidth": 0.5,
    "hatch.color": SOFT,
    "text.color": INK,
    # Words are words: a dollar sign in a name is no formula.
    "text.parse_math": False,
    "xtick.color": INK,
    "ytick.color": INK,
    "svg.hashsalt": "setwright",
    "svg.fonttype": "path",
}


def sheet(width_in: float, height_in: float) -> Figure:
    """An empty white figure, size in inches."""
    from matplotlib import rc_context
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    with rc_context(STYLE):  # type: ignore[arg-type]
        figure = Figure(figsize=(width_in, height_in), facecolor=PAPER)
        FigureCanvasAgg(figure)
    return figure


def bare(axes: Axes) -> None:
    """Axes without a box and without marks."""
    for side in axes.spines.values():
        side.set_visible(False)
    axes.tick_params(length=0)


def fitted(words: str, size: float, width_in: float, most: int) -> list[str]:
    """Words broken into at most ``most`` lines that fit a width at a type size in points."""
    letters = max(int(width_in / (size * LETTER / 72)), 4)
    lines = wrap(words, letters)
    if len(lines) > most:
        lines = lines[:most]
        lines[-1] = lines[-1][: letters - 1].rstrip() + "…"
    return lines


def save(figure: Figure, path: Path) -> None:
    """Write a picture whole or not at all; the suffix, .svg or .png, says how.

    The same figure gives the same bytes: no date, fixed ids.

    Raises:
        DocumentError: when the suffix is another one or the file cannot be written.
    """
    from matplotlib import rc_context

    kind = path.suffix.lower()
    if kind not in (".svg", ".png"):
        raise DocumentError(str(path), (Fault("", kind or "no suffix", ".svg or .png"),))
    metadata: dict[str, Any] = {"Date": None} if kind == ".svg" else {"Software": "Setwright"}
    into = BytesIO()
    with rc_context(STYLE):  # type: ignore[arg-type]
        figure.savefig(into, format=kind[1:], dpi=DPI, metadata=metadata)
    beside = path.with_name(f".{path.name}.part")
    try:
        beside.write_bytes(into.getvalue())
        beside.replace(path)
    except OSError as error:
        beside.unlink(missing_ok=True)
        reason = (error.strerror or type(error).__name__).lower()
        raise DocumentError(
            str(path), (Fault("", reason, "a place that can be written"),)
        ) from error
