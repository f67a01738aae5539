"""Exercises, muscles and findings as text for the terminal."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from setwright.anatomy.atlas import part
from setwright.exercises import catalogue
from setwright.exercises.model import Exercise
from setwright.handout.wording import folded
from setwright.sources.library import finding
from setwright.sources.model import Finding

WIDTH = 88
BAR = 20
# Below this share an exercise is no answer to "what trains this part?".
TRAINS_FROM = 0.3
TRAINER_KEY = (
    "share: how much of a working set counts, 0 to 1; length: fibre length over optimal length\n"
    "where the part is loaded; spine: cost to the lower back, 0 to 1"
)


@dataclass(frozen=True)
class Trainer:
    """An exercise as one that trains a part.

    Attributes:
        exercise: its id.
        share: 0 to 1.
        length: fibre length over optimal length where the part is loaded; None when unknown.
        spinal_load: cost to the spine, 0 to 1.
    """

    exercise: str
    share: float
    length: float | None
    spinal_load: float


def trainers(part_id: str, by: str, most: int) -> tuple[Trainer, ...]:
    """The exercises that train a part, best first.

    Args:
        part_id: id of the part.
        by: ``share``, ``length`` (longest under load first) or ``spine`` (least spinal load first).
        most: how many to give back.
    """
    found = []
    for exercise in catalogue.exercises():
        profile = catalogue.profile(exercise.id)
        for share in profile.shares:
            if share.part == part_id and share.value >= TRAINS_FROM:
                found.append(
                    Trainer(exercise.id, share.value, share.loaded_ratio, profile.spinal_load)
                )
    keys = {
        "share": lambda row: (-row.share, -(row.length or 0.0), row.exercise),
        "length": lambda row: (-(row.length or 0.0), -row.share, row.exercise),
        "spine": lambda row: (row.spinal_load, -row.share, row.exercise),
    }
    return tuple(sorted(found, key=keys[by])[:most])


def _length(row: Trainer) -> str:
    return "" if row.length is None else f"{row.length:.2f}"


def muscle_text(rows: Mapping[str, Sequence[Trainer]]) -> str:
    """Parts with their actions and the exercises that train them."""
    blocks = []
    for ident, found in rows.items():
        known = part(ident)
        does = ", ".join(f"{action} {leverage:.1f}" for action, leverage in known.actions.items())
        lines = [
            known.name,
            folded(f"does: {does}", WIDTH, initial_indent="  ", subsequent_indent="        "),
        ]
        if known.volume_cm3:
            lines.append(f"  volume, one side: {known.volume_cm3:.0f} cm3")
        lines.append(f"  {'exercise':<38}{'share':>7}{'length':>9}{'spine':>7}")
        lines += [
            f"  {catalogue.exercise(row.exercise).name:<38}{row.share:>7.2f}{_length(row):>9}"
            f"{row.spinal_load:>7.2f}"
            for row in found
        ]
        if not found:
            lines.append("  no exercise of the catalogue trains it with a share of 0.3 or more")
        blocks.append("\n".join(lines))
    return "\n\n".join([*blocks, TRAINER_KEY])


def exercise_text(exercise: Exercise, computed: str, compared: Sequence[str] = ()) -> str:
    """One exercise: what it trains, what it asks of the joints, handling, cues, findings.

    Args:
        exercise: the exercise.
        computed: what was computed for a body.
        compared: lines on published comparisons.
    """
    blocks = [
        [*_head(exercise), ""],
        computed.split("\n"),
        ["", *_asks(exercise), "", *_handling(exercise)],
        ["", *_published(exercise)] if exercise.findings else [],
        ["", *compared] if compared else [],
    ]
    return "\n".join(line for block in blocks for line in block)


def _head(exercise: Exercise) -> list[str]:
    low, high = exercise.rep_band
    kit = " or ".join(" and ".join(needed) or "no kit" for needed in exercise.kit)
    return [
        exercise.name,
        f"  {exercise.kind}, {exercise.pattern}; {exercise.resistance}; "
        f"{'one side at a time' if exercise.sides == 'one' else 'both sides'}; "
        f"{low} to {high} repetitions suit it; set-up {exercise.setup_s} s",
        *_items("  kit: ", [kit], "    "),
        f"  steadiness: {_steadiness(exercise.stability)}",
    ]


def _steadiness(stability: float) -> str:
    """What holds the person, in words."""
    if stability >= 0.85:
        return "held by a machine, pad or bench"
    if stability >= 0.6:
        return "steady on its own"
    return "has to be balanced" if stability >= 0.4 else "balance is part of what ends the set"


def _asks(exercise: Exercise) -> list[str]:
    asked = ", ".join(f"{action} {size:.1f}" for action, size in exercise.actions.items())
    return _items("  asks for: ", [asked], "    ")


def _handling(exercise: Exercise) -> list[str]:
    lines = ["  how", *_items("    - ", exercise.cues, "      ")]
    if exercise.cautions:
        lines += ["  take care", *_items("    - ", exercise.cautions, "      ")]
    return lines


def _published(exercise: Exercise) -> list[str]:
    """The findings on an exercise, in a sentence each."""
    told = [f"{finding(ident).finding} ({ident})" for ident in exercise.findings]
    return ["  published", *_items("    - ", told, "      ")]


def _items(first: str, items: Sequence[str], then: str) -> list[str]:
    return [folded(item, WIDTH, initial_indent=first, subsequent_indent=then) for item in items]


def finding_text(finding: Finding) -> str:
    """One finding whole: values with intervals, population, citation."""
    lines = [
        finding.id,
        folded(finding.finding, WIDTH, initial_indent="  ", subsequent_indent="  "),
    ]
    for value in finding.values:
        figure = "" if value.value is None else f"{value.value:g}"
        span = ""
        if value.low is not None or value.high is not None:
            low = "" if value.low is None else f"{value.low:g}"
            high = "" if value.high is None else f"{value.high:g}"
            span = f" ({low} to {high})"
        note = f"; {value.note}" if value.note else ""
        lines.append(
            folded(
                f"{value.name}: {figure}{span} {value.unit}{note}".rstrip(),
                WIDTH,
                initial_indent="    ",
                subsequent_indent="      ",
            )
        )
    if finding.population:
        lines.append(f"  people: {finding.population}")
    lines.append(f"  basis: {finding.basis}; read: {finding.read}")
    for citation in finding.citations:
        where = ", ".join(
            str(item)
            for item in (citation.journal, citation.year, citation.doi and f"doi {citation.doi}")
            if item
        )
        lines.append(
            folded(
                f"{citation.title}. {where}",
                WIDTH,
                initial_indent="  source: ",
                subsequent_indent="    ",
            )
        )
    if finding.note:
        lines.append(
            folded(finding.note, WIDTH, initial_indent="  note: ", subsequent_indent="    ")
        )
    return "\n".join(lines)


def findings_text(findings: Sequence[Finding]) -> str:
    """Findings by topic, a line each."""
    lines: list[str] = []
    for topic, rows in groupby(
        sorted(findings, key=lambda row: (row.topic, row.id)), key=lambda row: row.topic
    ):
        lines.append(topic)
        for row in rows:
            lines.append(
                folded(
                    f"{row.id}: {row.finding}",
                    WIDTH,
                    initial_indent="  ",
                    subsequent_indent="      ",
                )
            )
    return "\n".join(lines)
