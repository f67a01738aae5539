"""The computed profiles against published comparisons: writes docs/profiles-against-trials.md."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from pathlib import Path

import numpy as np

from setwright.exercises import comparing
from setwright.exercises.comparing import Outcome, figure, outcome
from setwright.exercises.comparisons import Comparison, Side, comparisons, unexpressed
from setwright.mechanics.movement import Posture
from setwright.sources.library import finding

OUT = Path(__file__).parent.parent / "docs" / "profiles-against-trials.md"
GROWN = ("longitudinal", "acute imaging")
GROUPS: tuple[tuple[str, Callable[[Comparison], bool]], ...] = (
    ("longitudinal growth", lambda one: one.kind == "longitudinal"),
    ("acute imaging", lambda one: one.kind == "acute imaging"),
    ("**longitudinal growth and acute imaging**", lambda one: one.kind in GROWN),
    ("**moments, loads, moment arms and lengths**", lambda one: one.kind in ("moment", "length")),
    ("activity by surface EMG", lambda one: one.kind == "activity"),
    ("all", lambda one: True),
    ("of all: nulls (`=`, `about 0`)", lambda one: one.relation in ("=", "about 0")),
    ("of all: trained at all (`> 0`)", lambda one: one.relation == "> 0"),
    ("of all: more or no less (`>`, `>=`)", lambda one: one.relation in (">", ">=")),
)
UNITS = {"peak moment": " N·m", "mean moment": " N·m", "arm": " mm", "length change": " mm"}


def held() -> tuple[tuple[Outcome, ...], tuple[tuple[Comparison, str], ...]]:
    """Every comparison that could be computed, and those that could not with the reason."""
    done, left = [], []
    for one in comparisons():
        try:
            done.append(outcome(one))
        except (KeyError, ValueError) as error:
            left.append((one, str(error).strip("'\"")))
    return tuple(done), tuple(left)


def measured(of: Iterable[Outcome]) -> list[tuple[str, str, float, float]]:
    """Finding, side, measured percent and computed growth of every side that may calibrate."""
    found = {}
    for one in of:
        if one.comparison.calibrates:
            for side in one.comparison.sides:
                words = f"{', '.join(side.does)}: {', '.join(side.parts)}"
                if side.measured_percent is not None:
                    computed = figure("growth", side)
                    found[one.comparison.finding, words] = (side.measured_percent, computed)
    return [(*key, *value) for key, value in found.items()]


def spearman(left: Sequence[float], right: Sequence[float]) -> float:
    """Rank correlation, ties sharing their mean rank."""
    return float(np.corrcoef(_ranks(left), _ranks(right))[0, 1])


def _ranks(values: Sequence[float]) -> list[float]:
    table = np.asarray(values)
    return [float((table < v).sum() + 0.5 * ((table == v).sum() - 1)) for v in table]


def within_trials(rows: list[tuple[str, str, float, float]]) -> list[tuple[float, float]]:
    """Measured and computed growth over the mean of the same trial's sides."""
    pairs = []
    for trial in dict.fromkeys(row[0] for row in rows):
        own = np.array([row[2:] for row in rows if row[0] == trial])
        means = own.mean(axis=0)
        if len(own) > 1 and (means > 0).all():
            pairs += [(float(m), float(c)) for m, c in own / means]
    return pairs


def text() -> str:
    """The document."""
    done, left = held()
    lines = [
        "# The computed profiles against published comparisons",
        "",
        "Written by `scripts/profiles_against_trials.py` from `exercises/comparisons/*.yaml`.",
        f"`>` is reproduced when the left figure is larger by more than {comparing.MORE} (growth,"
        f" share, activation), by {comparing.MORE:.0%} (moments, loads, ratios) or by"
        f" {comparing.MORE_M * 1000:.0f} mm (arms, lengths); `=` when the two differ by no more"
        f" than {comparing.SAME} or {comparing.SAME_PART:.0%}"
        f" ({comparing.SAME_PART_MOMENT:.0%} for moments and loads); `>=` when the left one is"
        f" not smaller by more than that; `> 0` above {comparing.TRAINED} (arms: above"
        f" {comparing.MORE_M * 1000:.0f} mm); `about 0` up to {comparing.NOTHING}.",
        "Some sources contradict each other; both then stand here and one of them must be missed.",
        "",
        "| kind | reproduced | of | |",
        "| --- | ---: | ---: | ---: |",
    ]
    for title, wanted in GROUPS:
        mine = [one for one in done if wanted(one.comparison)]
        good = sum(one.reproduced for one in mine)
        lines.append(f"| {title} | {good} | {len(mine)} | {good / max(len(mine), 1):.0%} |")
    rows = measured(done)
    pairs = within_trials(rows)
    lines += [
        "",
        f"Rank correlation (Spearman) of computed with measured growth: {_rank(pairs)} over"
        f" {len(pairs)} parts and conditions, each over the mean of its trial;"
        f" {_rank([row[2:] for row in rows])} without that division.",
        "",
    ]
    lines += _table("Missed", [one for one in done if not one.reproduced], reasons=True)
    lines += _table("Reproduced", [one for one in done if one.reproduced], reasons=False)
    if left:
        lines += ["## Not computed", "", "| comparison | why |", "| --- | --- |"]
        lines += [f"| {one.id} | {why} |" for one, why in left]
        lines.append("")
    lines += ["## Measured growth", "", "| trial | side | measured % | computed |"]
    lines.append("| --- | --- | ---: | ---: |")
    lines += [f"| {trial} | {side} | {m:g} | {c:.2f} |" for trial, side, m, c in rows]
    lines += ["", "## Not expressed", "", "| finding | what | why not |", "| --- | --- | --- |"]
    lines += [f"| {one.finding} | {one.what} | {one.reason} |" for one in unexpressed()]
    return "\n".join(lines) + "\n"


def _rank(pairs: Sequence[tuple[float, float]]) -> str:
    if len(pairs) < 3:
        return "no figure"
    return f"{spearman([m for m, _ in pairs], [c for _, c in pairs]):.2f}"


def _table(title: str, of: list[Outcome], reasons: bool) -> list[str]:
    why, rule = (" why |", " --- |") if reasons else ("", "")
    lines = [
        f"## {title}",
        "",
        f"| kind | comparison | left | right | source |{why}",
        f"| --- | --- | ---: | ---: | --- |{rule}",
    ]
    for one in of:
        asked = one.comparison
        right = "" if one.right is None else _shown(asked, one.right)
        reason = f" {asked.reason or 'not yet explained'} |" if reasons else ""
        lines.append(
            f"| {asked.kind} | {words(asked)} | {_shown(asked, one.left)} | {right}"
            f" | {source(asked.finding)} |{reason}"
        )
    return [*lines, ""]


def _shown(asked: Comparison, value: float) -> str:
    if asked.quantity in ("arm", "length change"):
        return f"{1000 * value:.0f}{UNITS[asked.quantity]}"
    if asked.quantity in UNITS:
        return f"{value:.0f}{UNITS[asked.quantity]}"
    return f"{value:.0f}" if asked.quantity == "load" else f"{value:.2f}"


def words(asked: Comparison) -> str:
    """A comparison in one line."""
    left = side_words(asked.left)
    right = "" if asked.right is None else side_words(asked.right, asked.left)
    of = "" if asked.quantity == "growth" else f"{asked.quantity}: "
    return f"{of}{left} {asked.relation} {right}".strip()


def side_words(side: Side, beside: Side | None = None) -> str:
    """One side in words; what is the same on the other side is left out."""
    said = []
    for name in ("does", "parts", "over", "actions"):
        value: tuple[str, ...] = getattr(side, name)
        if value and (beside is None or value != getattr(beside, name)):
            joined = (" + " if name == "does" else ", ").join(value)
            said.append(f"over {joined}" if name == "over" else joined)
    if side.posture and (beside is None or side.posture != beside.posture or side.to != beside.to):
        said.append(_angles(side.posture) + (f" to {_angles(side.to)}" if side.to else ""))
    if side.load_kg is not None and beside is None:
        said.append(f"{side.load_kg:g} kg")
    if side.load_share is not None:
        said.append(f"at {side.load_share:.0%} of the largest load")
    if side.condition:
        said.append(side.condition)
    return said[0] + (f" ({'; '.join(said[1:])})" if said[1:] else "")


def _angles(posture: Posture) -> str:
    return ", ".join(f"{name} {degrees:g}" for name, degrees in posture.items())


def source(ident: str) -> str:
    """Journal, year and identifier of a finding."""
    if not finding(ident).citations:
        return f"{ident} (reference not read)"
    citation = finding(ident).citations[0]
    doi = f", [{citation.doi}](https://doi.org/{citation.doi})" if citation.doi else ""
    return f"{ident} ({citation.journal or 'journal not read'}, {citation.year}{doi})"


if __name__ == "__main__":
    OUT.write_text(text(), encoding="utf-8")
    print(text().split("## Reproduced")[0])
