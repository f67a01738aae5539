"""A design's report and ranked substitutes as text."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.design.design import Design
from setwright.design.swap import Swap
from setwright.exercises import catalogue
from setwright.handout.wording import folded

WIDTH = 88
# Near-equal substitutes printed; the JSON has them all.
SHOWN = 6


def design_text(found: Design) -> str:
    """How good the week is, what binds, what is not covered."""
    report = found.report
    proof = (
        "proved the best week of the model"
        if report.proven
        else f"at most {100 * report.gap:.1f} % short of the best week of the model"
    )
    lines = [
        f"Searched {report.options} exercises in {report.seconds:.1f} s: {proof}.",
        f"Expected growth, weighted by the aims: {report.growth:.2f} % a week (central figure; the "
        "audit gives intervals).",
    ]
    if report.binds:
        lines += ["", "What holds the week back"]
        lines += [
            folded(words, WIDTH, initial_indent="  - ", subsequent_indent="    ")
            for words in report.binds
        ]
    if report.alternatives:
        lines += ["", f"Nearly as good ({len(report.alternatives)} found, at most {SHOWN} shown)"]
        lines += [
            f"  - {catalogue.exercise(row.exercise).name} instead of "
            f"{catalogue.exercise(row.instead_of).name} ({100 * row.growth_change:+.1f} % growth)"
            for row in report.alternatives[:SHOWN]
        ]
    return "\n".join(lines)


def swaps_text(exercise: str, ranked: Sequence[Swap]) -> str:
    """Substitutes with what the week gains or loses."""
    name = catalogue.exercise(exercise).name
    if not ranked:
        return f"Nothing in the catalogue can take the place of {name} under these limits."
    lines = [
        f"In place of {name}:",
        f"  {'substitute':<40}{'growth':>9}{'spinal sets':>13}{'minutes':>9}",
    ]
    for row in ranked:
        over = "" if row.within_limits else "  over the session's spinal limit"
        lines.append(
            f"  {catalogue.exercise(row.exercise).name[:39]:<40}{100 * row.growth_change:>+8.1f}%"
            f"{row.spine_change:>+13.1f}{row.minutes_change:>+9.1f}{over}"
        )
    lines.append("  growth: change of the week's weighted growth, computed with the substitute in")
    return "\n".join(lines)
