"""What was traded: minutes, sets, rests and effort against growth."""

from __future__ import annotations

from setwright.audit.context import Context
from setwright.handout.remark_words import subject_words
from setwright.handout.teaching.content import Block, Picture, Section, Table, Words
from setwright.handout.teaching.trade_plots import (
    FLAT,
    TALL,
    per_ten_minutes,
    week_plot,
    worth_plot,
)
from setwright.handout.teaching.trials import Trial, whole_week, without_each
from setwright.handout.wording import changed

SOURCES = (
    "superset-meta-2025",
    "rest-volume-load-matched-trial-2022",
    "weekly-volume-frequency-meta-regression-2024",
)


def trade_section(context: Context, in_full: bool) -> Section:
    """The week with one thing changed at a time, rehearsed and computed again.

    Args:
        context: the week.
        in_full: with tables; otherwise the plot of the whole week and what is worth least.
    """
    minutes = sum(one.total_s for one in context.rehearsal.sessions) / 60
    whole = whole_week(context)
    without = sorted(without_each(context), key=lambda one: (per_ten_minutes(one), one.name))
    blocks: list[Block] = [
        Picture(
            "trade",
            week_plot(whole, minutes, TALL if in_full else FLAT),
            f"Expected growth over minutes a week; the week as it stands takes {minutes:.0f} min, "
            f"and with one rule changed everywhere: {'; '.join(_told(one) for one in whole)}",
            "The filled dot is the week as it stands, an open one the same week with one rule "
            "changed everywhere; lines: 80 % interval of the change in one and the same person.",
        )
    ]
    if not in_full:
        if without:
            blocks.append(_cheapest(without))
        return Section("trade", "What was traded", tuple(blocks))
    blocks = [
        Words(
            "Every plan buys growth with minutes. To see at what price, the week was rehearsed and "
            "computed again with one thing changed at a time; nothing here is a rule of thumb. "
            "Growth is that of the whole person, parts weighted by the aims.",
            SOURCES,
        ),
        *blocks,
        _table(whole),
    ]
    if without:
        blocks += [
            Picture(
                "worth",
                worth_plot([(subject_words(one.name), one) for one in without]),
                "For each exercise the growth the week would lose without it, with its interval, "
                "the minutes that would be saved, and the loss for ten minutes saved",
                "Each exercise left out in turn. Above stand those that cost least growth for the "
                "minutes they take: the first to go when time is short.",
            ),
            _cheapest(without),
        ]
    return Section("trade", "What was traded", tuple(blocks))


def _table(trials: tuple[Trial, ...]) -> Table:
    return Table(
        "The week with one rule changed everywhere",
        ("changed", "minutes", "growth, %", "80 % interval"),
        tuple(
            (
                one.name,
                changed(one.minutes, 0),
                changed(100 * one.growth),
                f"{changed(100 * one.low)} to {changed(100 * one.high)}",
            )
            for one in trials
        ),
        figures=(1, 2, 3),
    )


def _cheapest(without: list[Trial]) -> Words:
    first, last = without[0], without[-1]
    return Words(
        f"Short of time, {subject_words(first.name)} is the first to go: without it the week loses "
        f"{_percent(-first.growth)} % of its growth ({_percent(-first.high)} to "
        f"{_percent(-first.low)}) and {-first.minutes:.0f} min. {subject_words(last.name)} is the "
        f"last: {_percent(-last.growth)} % for {-last.minutes:.0f} min."
    )


def _told(one: Trial) -> str:
    return f"{one.name} {changed(one.minutes, 0)} min and {changed(100 * one.growth)} % of growth"


def _percent(share: float) -> str:
    """A share in percent with one decimal, and no minus before nothing."""
    return f"{round(100 * share, 1) + 0.0:.1f}"
