"""Two plans beside each other in a table and in plain sentences: which is better for what."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from setwright.anatomy.atlas import muscles, part
from setwright.audit.compare import Comparison, Difference, PartDifference, WeekFigures
from setwright.exercises.catalogue import exercise
from setwright.handout.compare_remarks import remark_lines
from setwright.handout.wording import counted, folded, listed, number

WIDTH = 96
# Parts named in a sentence; the table has them all.
NAMED = 6
# Sets weighted by spinal load a week: less is no difference to a back.
LEAST_SPINAL = 1.0


def compare_text(found: Comparison, first: str = "A", second: str = "B") -> str:
    """The comparison as text.

    Args:
        found: the comparison.
        first: what the first plan is called.
        second: what the second plan is called.
    """
    heads = [
        f"{name}: {figures.title}"
        for name, figures in ((first, found.first), (second, found.second))
    ]
    blocks = [
        "\n".join(heads),
        "Which is better for what\n" + "\n".join(
            folded(one, WIDTH, initial_indent="  - ", subsequent_indent="    ")
            for one in sentences(found, first, second)
        ),
        "\n".join(_costs(found, first, second)),
        "\n".join(_doses(found.parts, first, second)),
    ]  # fmt: skip
    if found.remarks:
        blocks.append("\n".join(remark_lines(found.remarks, first, second)))
    return "\n\n".join(blocks)


def sentences(found: Comparison, first: str = "A", second: str = "B") -> tuple[str, ...]:
    """Which plan is better for what; what cannot be told apart is called no difference."""
    ours, theirs = found.first, found.second
    names = (first, second)
    return (
        _time(ours, theirs, names),
        _whole(found.growth, names),
        *_by_part(found.parts, names),
        _less(
            "spinal load", ours.spinal_sets, theirs.spinal_sets, LEAST_SPINAL,
            "sets weighted by spinal load a week", names,
        ),
        _variety(ours, theirs, names),
        _audit(ours, theirs, names),
    )  # fmt: skip


def _time(ours: WeekFigures, theirs: WeekFigures, names: tuple[str, str]) -> str:
    inside = (
        ours.minutes_low <= theirs.minutes <= ours.minutes_high
        or theirs.minutes_low <= ours.minutes <= theirs.minutes_high
    )
    figures = f"{ours.minutes:.0f} and {theirs.minutes:.0f} min a week"
    if inside:
        return f"Time: no difference ({figures}; one lies within the other's 80 % interval)."
    shorter = names[ours.minutes > theirs.minutes]
    return (
        f"Time: {shorter} is shorter by {abs(ours.minutes - theirs.minutes):.0f} min ({figures})."
    )


def _whole(growth: Difference, names: tuple[str, str]) -> str:
    figures = (
        f"{growth.first:.2f} and {growth.second:.2f} % a week, the parts weighted by the aims; "
        f"{names[1]} less {names[0]} {_interval(growth)}"
    )
    if not growth.differs:
        return f"Growth of the whole person: no difference ({figures})."
    return f"Growth of the whole person: {names[growth.median > 0]} gives more ({figures})."


def _by_part(parts: Sequence[PartDifference], names: tuple[str, str]) -> Iterable[str]:
    for side, name in enumerate(names):
        better = [one for one in parts if one.growth.differs and (one.growth.median > 0) == side]
        told = sorted(_by_muscle(better, parts), key=lambda item: -abs(item[1]))
        if not better:
            continue
        shown = [f"{muscle} ({median:+.2f})" for muscle, median in told[:NAMED]]
        more = len(told) - len(shown)
        rest = f", and {counted(more, 'muscle')} more" if more else ""
        said = f"{', '.join(shown)}{rest}" if told else counted(len(better), "deep part")
        yield (
            f"{name} is better for {said} (percent a week, {names[1]} less {names[0]}; of a "
            "muscle its part that differs most)."
        )
    same = sum(1 for one in parts if not one.growth.differs)
    if same:
        yield f"No difference in growth for {counted(same, 'part')} of {len(parts)}."


def _by_muscle(
    better: Sequence[PartDifference], parts: Sequence[PartDifference]
) -> Iterable[tuple[str, float]]:
    """The muscles that a plan is better for, each with its greatest difference.

    A muscle of which only some parts differ names them; parts that no plan need train are left out.
    """
    directly = [one for one in better if part(one.part).trained_directly]
    for muscle in dict.fromkeys(part(one.part).muscle for one in directly):
        here = [one for one in directly if part(one.part).muscle == muscle]
        whole = sum(1 for one in parts if part(one.part).muscle == muscle)
        greatest = max((one.growth.median for one in here), key=abs)
        if len(here) == whole > 1:
            yield f"{muscles()[muscle].name}", greatest
        else:
            yield from ((part(one.part).name, one.growth.median) for one in here)


def _less(
    what: str, ours: float, theirs: float, least: float, unit: str, names: tuple[str, str]
) -> str:
    figures = f"{number(round(ours, 1))} and {number(round(theirs, 1))} {unit}"
    if abs(ours - theirs) < least:
        return f"{what.capitalize()}: no difference to speak of ({figures})."
    return f"{what.capitalize()}: {names[ours > theirs]} is lighter on the spine ({figures})."


def _variety(ours: WeekFigures, theirs: WeekFigures, names: tuple[str, str]) -> str:
    counts = [
        f"{name} {counted(len(one.patterns), 'pattern')} in "
        f"{counted(len(one.exercises), 'exercise')}"
        for name, one in zip(names, (ours, theirs), strict=True)
    ]
    said = f"Variety: {counts[0]}, {counts[1]}"
    for name, own, other in ((names[0], ours, theirs), (names[1], theirs, ours)):
        alone = [one for one in own.patterns if one not in other.patterns]
        if alone:
            said += f"; only {name} has {listed(alone)}"
    return f"{said}."


def _audit(ours: WeekFigures, theirs: WeekFigures, names: tuple[str, str]) -> str:
    figures = (
        f"{names[0]} {ours.misses} missed and {ours.close} close, "
        f"{names[1]} {theirs.misses} missed and {theirs.close} close"
    )
    if ours.misses == theirs.misses:
        return f"Audit: as many misses in both ({figures})."
    return f"Audit: {names[ours.misses > theirs.misses]} misses fewer criteria ({figures})."


def _costs(found: Comparison, first: str, second: str) -> list[str]:
    rows = [("", first, second)]
    for label, words in (
        ("sessions a week", lambda one: str(one.sessions)),
        ("minutes a week", _minutes),
        ("minutes by session", lambda one: " ".join(f"{m:.0f}" for m in one.session_minutes)),
        ("working sets", lambda one: str(one.sets)),
        ("spinal load, week", lambda one: f"{one.spinal_sets:.1f}"),
        ("spinal load, fullest session", lambda one: f"{one.spinal_worst:.1f}"),
        ("movement patterns", lambda one: str(len(one.patterns))),
        ("exercises", lambda one: str(len(one.exercises))),
        ("audit", lambda one: f"{one.holds} hold, {one.close} close, {one.misses} miss"),
    ):
        rows.append((label, words(found.first), words(found.second)))
    lines = _aligned(rows)
    for name, own, other in (
        (first, found.first, found.second),
        (second, found.second, found.first),
    ):
        alone = [exercise(one).name for one in own.exercises if one not in other.exercises]
        if alone:
            lines.append(
                folded(f"only in {name}: {', '.join(alone)}", WIDTH, subsequent_indent="  ")
            )
    return lines


def _minutes(figures: WeekFigures) -> str:
    return f"{figures.minutes:.0f} ({figures.minutes_low:.0f} to {figures.minutes_high:.0f})"


def _doses(parts: Sequence[PartDifference], first: str, second: str) -> list[str]:
    rows = [
        (
            "part", f"sets {first}", f"sets {second}", f"growth {first}", f"growth {second}",
            f"{second} less {first}",
        )
    ]  # fmt: skip
    for one in parts:
        told = _interval(one.growth) if one.growth.differs else "no difference"
        rows.append(
            (
                part(one.part).name, f"{one.sets[0]:.1f}", f"{one.sets[1]:.1f}",
                f"{one.growth.first:.2f}", f"{one.growth.second:.2f}", told,
            )
        )  # fmt: skip
    return ["Fractional sets a week and expected growth, % a week (80 % interval)", *_aligned(rows)]


def _interval(growth: Difference) -> str:
    return f"{growth.median:+.2f} ({growth.low:+.2f} to {growth.high:+.2f})"


def _aligned(rows: Sequence[tuple[str, ...]]) -> list[str]:
    widths = [max(len(row[at]) for row in rows) for at in range(len(rows[0]))]
    return [
        "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
        for row in rows
    ]
