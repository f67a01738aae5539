"""Strength, its trend, and honesty of effort, in plain words."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from setwright.documents.units import Unit, from_kg
from setwright.exercises import catalogue
from setwright.handout.next_text import load_text
from setwright.training.effort import ENOUGH_CALLS
from setwright.training.lifter import Honesty, Trend
from setwright.training.strength_now import StrengthNow

WIDTH = 96
COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
# Bias that is not worth a word: calls come in whole repetitions.
SMALL = 0.5


def strength_text(rows: Sequence[StrengthNow], unit: Unit, today: date) -> str:
    """A short block an exercise."""
    if not rows:
        return "No working set with a known load is in the log yet."
    blocks = [_block(row, unit, today) for row in rows]
    legend = (
        "1RM-equivalent: the load expected for one repetition on an ordinary, fresh day, with an "
        "80 %\ninterval; computed from sets, not tested. Trend: percent a week."
    )
    return "\n\n".join([*blocks, legend])


def _block(row: StrengthNow, unit: Unit, today: date) -> str:
    one = row.lifted
    figure = load_text(_round(one.median, unit), row.exercise, unit)
    low, high = (f"{round(from_kg(kg, unit)):g}" for kg in (one.low, one.high))
    days = today.toordinal() - row.last_day
    ago = "today" if days == 0 else "yesterday" if days == 1 else f"{days} days ago"
    return "\n".join(
        [
            catalogue.exercise(row.exercise).name,
            f"  1RM-equivalent  {figure} ({low} to {high})",
            f"  trend           {trend_words(row.trend)}",
            f"  effort          {honesty_text(row.honesty, row.calls)}",
            f"  from            {row.sets} working sets, the last {ago}",
        ]
    )


def trend_words(trend: Trend) -> str:
    """The trend, and whether it stands out of the noise."""
    figures = f"{trend.percent_a_week:+.1f} % ({trend.low:+.1f} to {trend.high:+.1f})"
    if trend.low > 0:
        return f"rising, {figures}"
    if trend.high < 0:
        return f"falling, {figures}"
    return f"no change beyond noise, {figures}"


def honesty_text(honesty: Honesty | None, calls: int) -> str:
    """How calls of repetitions in reserve compare with what was left, with its uncertainty."""
    if honesty is None:
        return f"too few calls of repetitions in reserve to say ({calls} of {ENOUGH_CALLS})"
    span = f"80 % between {honesty.low:+.1f} and {honesty.high:+.1f}, {honesty.calls} calls"
    if honesty.low < 0 < honesty.high:
        return f"calls of repetitions in reserve show no clear bias ({span})"
    if abs(honesty.bias) < SMALL:
        return f"calls are within half a repetition of what is left ({span})"
    way = "earlier" if honesty.bias > 0 else "later"
    return f"tends to stop {_about(abs(honesty.bias))} {way} than felt ({span})"


def _about(reps: float) -> str:
    whole = round(reps)
    if reps < 0.75:
        return "about half a repetition"
    if whole < len(COUNTS):
        return f"about {COUNTS[whole]} {'repetition' if whole == 1 else 'repetitions'}"
    return f"about {whole} repetitions"


def _round(load_kg: float, unit: Unit) -> float:
    """Half a unit for show (round-e1rm)."""
    step = from_kg(1.0, unit)
    return round(load_kg * step * 2) / 2 / step
