"""The lab's report as text."""

from __future__ import annotations

from setwright.handout.wording import folded
from setwright.lab.check import Check
from setwright.lab.report import (
    TARGET_BIAS,
    TARGET_COVER,
    TARGET_LOWER,
    CoachReport,
    Figure,
    LabReport,
    OpenReport,
)

WIDTH = 100


def lab_text(report: LabReport) -> str:
    """Checks, open loop and closed loop as tables."""
    head = (
        f"{report.lifters:,} virtual lifters, {report.weeks} weeks, seed {report.seed}. "
        "They follow other laws than the estimate assumes: docs/lab.md."
    )
    return "\n\n".join(
        (
            head,
            _checks(report.checks),
            _open(report.open_loop),
            _closed(report.closed_loop),
        )
    )


def _checks(checks: tuple[Check, ...]) -> str:
    met = sum(one.met for one in checks)
    lines = [f"PUBLISHED FIGURES: {met} of {len(checks)} met", ""]
    source = ""
    for one in checks:
        if one.finding != source:
            source = one.finding
            lines.append(f"{one.source or 'source'} [{source}]")
        mark = "met   " if one.met else "missed"
        lines.append(
            f"  {mark} {one.measured:6.2f}  published {one.published:.2f}, "
            f"{one.low:.2f} to {one.high:.2f} {one.unit}: {one.what}"
        )
    return _lines(lines)


def _open(found: OpenReport) -> str:
    lines = [
        f"OPEN LOOP: the next set's repetitions, {found.sets:,} sets",
        "",
        f"  {'foretold by':34s}{'mean error':>11s}{'median':>8s}{'bias':>7s}{'off by > 3':>12s}",
    ]
    for rule in found.rules:
        lines.append(
            f"  {rule.name:34s}{rule.mae:11.2f}{rule.median:8.2f}{rule.bias:+7.2f}"
            f"{100 * rule.over_three:10.1f} %"
        )
    low, high = TARGET_COVER
    lines += [
        "",
        f"  {found.lower:.0f} % lower than the best baseline ({found.best}); "
        f"{_interval(found.lower_by)} repetitions a lifter. "
        f"Target {TARGET_LOWER:.0f} %: {_met(found.lower >= TARGET_LOWER)}.",
        f"  80 % interval: holds {found.covered:.1f} % of sets, {found.width:.1f} repetitions "
        f"wide. Target {low:.0f} to {high:.0f} %: {_met(low <= found.covered <= high)}.",
    ]
    bias = found.bias
    if bias is not None:
        lines.append(
            f"  Bias of calls after six weeks: off by {bias.error:.2f} repetitions a lifter "
            f"(the same for everyone: {bias.error_alike:.2f}; by exercise "
            f"{bias.error_exercise:.2f}); real mean {bias.real:+.2f}, told "
            f"{bias.told:+.2f}. Target {TARGET_BIAS:g}: {_met(bias.error <= TARGET_BIAS)}."
        )
    lines += [
        f"  {found.slips:.1f} % of sets were logged wrongly; {found.slips_doubted:.0f} % of those "
        f"were doubted, and {found.right_doubted:.1f} % of right ones.",
        "",
        "  weeks    estimate  best baseline  covered",
    ]
    lines += [
        f"  {weeks:8s}{mine:9.2f}{best:15.2f}{covered:8.1f} %"
        for weeks, mine, best, covered in found.by_weeks
    ]
    return _lines(lines)


def _closed(coaches: tuple[CoachReport, ...]) -> str:
    lines = [
        "CLOSED LOOP: strength gained, and sets whose written repetitions could not be done",
        "",
        f"  {'coach':24s}{'gained %':>23s}{'beyond capacity %':>24s}"
        f"{'left':>6s}{'load':>7s}{'sets':>6s}",
    ]
    for one in coaches:
        lines.append(
            f"  {one.name:24s}{_interval(one.gained):>23s}{_interval(one.beyond):>24s}"
            f"{one.left:6.1f}{100 * one.fraction:5.0f} %{one.sets:6.0f}"
        )
    lines.append("")
    for one in coaches:
        if one.ours_more is not None and one.ours_beyond is not None:
            met = one.ours_more.low > 0 and one.ours_beyond.mean <= 0
            lines.append(
                f"  Ours less '{one.name}', same lifters and luck: gained "
                f"{_interval(one.ours_more)} points, beyond capacity "
                f"{_interval(one.ours_beyond)} points. More at no more sets beyond: {_met(met)}."
            )
    return _lines(lines)


def _lines(lines: list[str]) -> str:
    """Lines of a table as they are, prose folded."""
    return "\n".join(
        folded(line, WIDTH, subsequent_indent="    ") if len(line) > WIDTH else line
        for line in lines
    )


def _interval(one: Figure) -> str:
    return f"{one.mean:.2f} ({one.low:.2f} to {one.high:.2f})"


def _met(met: bool) -> str:
    return "met" if met else "missed"
