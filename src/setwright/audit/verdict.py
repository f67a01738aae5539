"""From a figure and its limits to a verdict."""

from __future__ import annotations

from setwright.audit.remark import Verdict


def verdict_of(
    figure: float, low: float | None = None, high: float | None = None, margin: float = 0.0
) -> Verdict:
    """Judge a figure: inside the limits it holds, outside by at most ``margin`` it is close.

    Args:
        figure: what was measured, in the unit of the limits.
        low: least it may be, or None.
        high: most it may be, or None.
        margin: how far outside still counts as close, same unit.
    """
    short = 0.0 if low is None else low - figure
    over = 0.0 if high is None else figure - high
    outside = max(short, over)
    if outside <= 1e-9:
        return "holds"
    return "close" if outside <= margin + 1e-9 else "misses"
