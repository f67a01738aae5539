"""What was left out, and why."""

from __future__ import annotations

from math import ceil

from setwright.anatomy.atlas import parts
from setwright.audit.context import Context
from setwright.audit.gaps import filler
from setwright.exercises import catalogue
from setwright.handout.content.coach import part_rows
from setwright.handout.teaching.content import Block, Points, Section, Table, Words
from setwright.handout.teaching.not_chosen import NotChosen, near, ruled
from setwright.handout.wording import changed, counted, listed, number
from setwright.plan.intake import Intake
from setwright.response.targets import bands

MOST_NEAR_SHORT = 3
# An exercise with a smaller share of a part is no way to train it.
LEAST_SHARE = 0.1


def left_out_section(context: Context, in_full: bool) -> Section:
    """Parts under their target, exercises not chosen, what rules out the rest, declared misses."""
    blocks: list[Block] = [_under(context, in_full), _unasked(context), _ruled(context)]
    found = near(context)
    if found:
        blocks += _near(found, in_full)
    declared = tuple(
        Words(f"{one.subject} ({one.criterion}): {one.because}.")
        for one in context.plan.unavoidable
    )
    if declared:
        blocks.append(Points(declared, "Misses that the plan declares, with the limit that binds"))
    return Section("left-out", "What was left out, and why", tuple(blocks))


def _under(context: Context, in_full: bool) -> Block:
    rows = [one for one in part_rows(context.response, context.intake) if one.standing == "below"]
    if not rows:
        return Words("No part that is asked for gets less than its least dose.")
    if not in_full:
        names = listed([f"{one.part} ({number(one.sets)} of {number(one.least)})" for one in rows])
        return Words(f"Under their least dose, in fractional sets a week: {names}.")
    columns = {part.name: column for column, part in enumerate(parts())}
    return Table(
        "Parts under their least dose, in fractional sets a week, and what would reach it",
        ("part", "gets", "least", "would reach it"),
        tuple(
            (
                one.part,
                number(one.sets),
                number(one.least),
                _filled(columns[one.part], one.least - one.sets, context.intake),
            )
            for one in rows
        ),
        figures=(1, 2),
        wide=(0, 3),
    )


def _filled(column: int, lacking: float, intake: Intake | None) -> str:
    """Sets of the exercise that trains a part best here, enough for what it lacks."""
    ident = filler(column, intake)
    share = float(catalogue.shares()[catalogue.row(ident), column]) if ident else 0.0
    if ident is None or share < LEAST_SHARE:
        return "nothing that can be done here"
    return f"{counted(ceil(lacking / share - 1e-9), 'set')} of {catalogue.exercise(ident).name}"


def _unasked(context: Context) -> Words:
    wanted = bands(context.intake)
    free = sum(band.aim == "leave out" for band in wanted.values())
    rows = part_rows(context.response, context.intake)
    unasked = [one for one in rows if one.standing == "no target"]
    words = (
        f"{counted(len(unasked), 'part')} that can be trained or get something are not asked for: "
        "large lifts serve them well enough, or few people aim at them (common practice)"
    )
    if free:
        words += f"; {counted(free, 'part')} the person wants left out"
    return Words(f"{words}.")


def _ruled(context: Context) -> Words:
    found = ruled(context)
    reasons = [
        f"{count} {why}"
        for count, why in (
            (found.no_kit, "for want of kit"),
            (found.avoided, "because the person avoids them"),
            (found.skill, "because they ask for more skill than the experience suggests"),
        )
        if count
    ]
    if not reasons:
        return Words(f"Nothing rules out any of the {found.total} exercises of the catalogue.")
    return Words(
        f"Of {found.total} exercises in the catalogue {found.open} can be given to this person; "
        f"the rest fall away: {listed(reasons)}."
    )


def _near(found: tuple[NotChosen, ...], in_full: bool) -> list[Block]:
    better = sum(one.trial.low > 0 for one in found)
    worse = sum(one.trial.high < 0 for one in found)
    words = Words(
        f"For {counted(len(found), 'exercise')} of the week the best of its three closest "
        f"relatives was put in its place. {_verdict(better, worse, len(found))} The change is of "
        "the week's growth, in one and the same imagined person, with its 80 % interval."
    )
    rows = found if in_full else found[:MOST_NEAR_SHORT]
    return [
        words,
        Table(
            "Close in value and not chosen" if in_full else "The three that would add most",
            ("not chosen", "instead of", "growth, %", "80 % interval", "minutes", "spinal sets"),
            tuple(_row(one) for one in rows),
            figures=(2, 3, 4, 5),
            wide=(0, 1),
        ),
    ]


def _verdict(better: int, worse: int, total: int) -> str:
    if better == 0 and worse == 0:
        return "None is clearly better or worse: taste and kit may decide."
    even = total - better - worse
    parts = [
        f"{better} would be better for growth" if better else "",
        f"{worse} worse" if worse else "",
        f"{even} cannot be told from what is there" if even else "",
    ]
    return f"Of these {listed([one for one in parts if one])}."


def _row(one: NotChosen) -> tuple[str, ...]:
    trial = one.trial
    return (
        catalogue.exercise(one.exercise).name,
        catalogue.exercise(one.instead_of).name,
        changed(100 * trial.growth),
        f"{changed(100 * trial.low)} to {changed(100 * trial.high)}",
        changed(trial.minutes, 0),
        changed(one.spine),
    )
