"""Write docs/growth.md and its picture from the fit."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Final

import numpy as np

import growth_picture
from growth_at_lengths import TITLE
from growth_fitting import (
    Constants,
    Fitting,
    LeftOut,
    leave_one_out,
    rank,
    rank_same_muscle,
    straight,
    with_power,
    with_short_slope,
)
from growth_trials import Trial
from setwright.mechanics.growth import LENGTH_WEIGHT

PAGE: Final = Path(__file__).parent.parent / "docs" / "growth.md"
WRITTEN: Final = "<!-- Below this line written by scripts/fit_growth.py. -->"
KINDS: Final = ("imaging", "lengths", "no difference")


def write(trials: Sequence[Trial]) -> str:
    """Write page and picture; a summary for the screen."""
    fitting = Fitting(straight(), trials)
    left_out = leave_one_out(fitting)
    growth_picture.draw(left_out, f"Spearman {rank(left_out):.2f}, each trial left out")
    above = PAGE.read_text(encoding="utf-8").split(WRITTEN)[0]
    tables = "\n".join(
        (
            *_families(trials),
            *_weights(trials, fitting, left_out),
            *_contrasts(left_out),
            *_trials(left_out),
        )
    )
    PAGE.write_text(f"{above}{WRITTEN}\n\n{tables}\n", encoding="utf-8")
    fitted = fitting.best().weight
    summary = [*_families(trials), *_weights(trials, fitting, left_out)]
    summary.append(f"Fitted {fitted:.2f}; LENGTH_WEIGHT in mechanics/growth.py is {LENGTH_WEIGHT}.")
    if abs(fitted - LENGTH_WEIGHT) > 0.1:
        summary.append("Set LENGTH_WEIGHT, and 'stretch slope' in response/factors.py, anew.")
    return "\n".join(summary)


def _families(trials: Sequence[Trial]) -> list[str]:
    lines = [
        "## The figure with one constant, and with one more",
        "",
        "Spearman of predicted with measured growth, each trial left out: over all conditions,"
        " those of the imaging trials, those of the site data, and over the mean of the same muscle"
        " in its trial instead of over that of all its muscles.",
        "",
        "| constants | fitted to all | Spearman | imaging | site data | same muscle | mean error |",
        "| --- | --- | ---: | ---: | ---: | ---: | ---: |",
    ]
    families = {
        "weight": straight(),
        "weight, power of the share": with_power(),
        "weight beyond the best length, another below it": with_short_slope(),
    }
    lines.append(_row("no length at all", [Constants(0.0)], trials))
    lines += [_row(words, family, trials) for words, family in families.items()]
    return [*lines, ""]


def _row(words: str, family: Sequence[Constants], trials: Sequence[Trial]) -> str:
    fitting = Fitting(family, trials)
    of = leave_one_out(fitting)
    best = fitting.best()
    said = f"weight {best.weight:.2f}"
    said += f", power {best.power:g}" if best.power != 1 else ""
    said += f", below {best.short:g}" if best.short is not None else ""
    ranks = [rank(of), *(rank([o for o in of if o.trial.kind == kind]) for kind in KINDS[:2])]
    ranks.append(rank_same_muscle(of))
    error = np.mean([one.error for one in of])
    cells = [words, said, *(f"{value:.2f}" for value in ranks), f"{error:.2f}"]
    return f"| {' | '.join(cells)} |"


def _weights(trials: Sequence[Trial], fitting: Fitting, of: Sequence[LeftOut]) -> list[str]:
    folds = sorted(one.constants.weight for one in of)
    lines = [
        "## The weight",
        "",
        "| fitted to | trials | weight | SD over resampled trials |",
        "| --- | ---: | ---: | ---: |",
    ]
    groups = {"all": trials, **{kind: [t for t in trials if t.kind == kind] for kind in KINDS}}
    for words, own in groups.items():
        one = fitting if words == "all" else Fitting(straight(), own)
        best, spread = one.best().weight, one.spread().std()
        lines.append(f"| {words} | {len(one.names)} | {best:.2f} | {spread:.2f} |")
    low, middle, high = folds[0], float(np.median(folds)), folds[-1]
    return [
        *lines,
        "",
        f"With one trial left out at a time: {low:.2f} to {high:.2f}, middle {middle:.2f}.",
        "",
    ]


def _contrasts(of: Sequence[LeftOut]) -> list[str]:
    lines = [
        "## Long against short, site data",
        "",
        f"{TITLE}; pooled over the sites of a muscle. Growth as long over short.",
        "",
        "| study | muscle | loaded ratio long | short | grew % long | short | predicted growth |",
        "| --- | --- | ---: | ---: | ---: | ---: | ---: |",
    ]
    by_study = {one.trial.name: one for one in of if one.trial.kind == "lengths"}
    for one in by_study.values():
        places = {(c.condition, c.parts): row for row, c in enumerate(one.trial.conditions)}
        for (which, parts), long in places.items():
            if which == "long":
                short = places["short", parts]
                ends = [one.trial.conditions[row] for row in (long, short)]
                lengths = [f"{end.loaded_ratio:.2f}" for end in ends]
                grew = [f"{end.measured:g}" for end in ends]
                ratio = f"{one.predicted[long] / one.predicted[short]:.2f} times"
                cells = [one.trial.name, ", ".join(parts), *lengths, *grew, ratio]
                lines.append(f"| {' | '.join(cells)} |")
    return [*lines, ""]


def _trials(of: Sequence[LeftOut]) -> list[str]:
    marks = growth_picture.letters(of)
    lines = [
        "## Every trial, predicted without it",
        "",
        "| | trial | weight without it | error | condition | grew % | of the mean | predicted |",
        "| --- | --- | ---: | ---: | --- | ---: | ---: | ---: |",
    ]
    for one in of:
        head = f"| {marks[one.trial.name]} | {one.trial.name} | {one.constants.weight:.2f}"
        head += f" | {one.error:.2f}"
        for row, (condition, measured, predicted) in enumerate(
            zip(one.trial.conditions, one.trial.measured, one.predicted, strict=True)
        ):
            start = "| | | |" if row else head
            lines.append(
                f"{start} | {condition.words} | {condition.measured:g} | {measured:.2f}"
                f" | {predicted:.2f} |"
            )
    return lines
