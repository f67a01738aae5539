"""The picture of predicted against measured relative growth, a letter for each trial."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from string import ascii_letters
from typing import TYPE_CHECKING, Final

from growth_fitting import LeftOut
from setwright.handout.drawing import FAINT, INK, PAPER, SOFT, STYLE, save, sheet

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

OUT: Final = Path(__file__).parent.parent / "docs" / "pictures"
KINDS: Final = {"imaging": INK, "lengths": SOFT}


def letters(of: Sequence[LeftOut]) -> dict[str, str]:
    """A letter for each trial."""
    return dict(zip((one.trial.name for one in of), ascii_letters, strict=False))


def draw(of: Sequence[LeftOut], words: str) -> None:
    """Write the picture as PNG and SVG.

    Args:
        of: trials, each predicted without itself.
        words: what stands in the corner.
    """
    from matplotlib import rc_context

    with rc_context(STYLE):  # type: ignore[arg-type]
        figure = sheet(7.6, 4.6)
        _marks(figure.add_axes((0.08, 0.11, 0.5, 0.86)), of, words)
        _legend(figure, of)
    for kind in ("png", "svg"):
        save(figure, OUT / f"growth-against-trials.{kind}")


def _marks(axes: Axes, of: Sequence[LeftOut], words: str) -> None:
    axes.set_facecolor(PAPER)
    marks = letters(of)
    for one in of:
        for measured, predicted in zip(one.trial.measured, one.predicted, strict=True):
            axes.text(
                measured,
                predicted,
                marks[one.trial.name],
                color=KINDS[one.trial.kind],
                fontsize=9,
                ha="center",
                va="center",
            )
    right = max(float(one.trial.measured.max()) for one in of)
    left = min(float(one.trial.measured.min()) for one in of)
    top = max(float(one.predicted.max()) for one in of)
    axes.plot([0, top], [0, top], color=FAINT, linewidth=0.8, zorder=0)
    axes.set_xlim(min(left, 0) - 0.15, right + 0.15)
    axes.set_ylim(-0.1, top * 1.08)
    axes.set_xlabel("measured growth over the mean of the trial")
    axes.set_ylabel("predicted without the trial, over its mean")
    axes.text(0.98, 0.03, words, ha="right", transform=axes.transAxes)
    for side in ("top", "right"):
        axes.spines[side].set_visible(False)


def _legend(figure: Figure, of: Sequence[LeftOut]) -> None:
    step = 0.9 / max(len(of), 20)
    for row, (one, mark) in enumerate(zip(of, letters(of).values(), strict=True)):
        shade, height = KINDS[one.trial.kind], 0.965 - row * step
        name = one.trial.name.replace("-", " ")
        figure.text(0.61, height, mark, color=shade, fontsize=7, va="top")
        figure.text(0.64, height, name, color=shade, fontsize=7, va="top")
    figure.text(0.61, 0.02, "grey: open data of sites", color=SOFT, fontsize=7)
