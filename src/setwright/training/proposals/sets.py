"""More sets for a part under its target, fewer for one over it, or that does not recover."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from setwright.anatomy.atlas import index, part
from setwright.exercises import catalogue
from setwright.plan.week import Entry, Plan
from setwright.rehearsal.rehearse import rehearse
from setwright.training.facts.dose import NEAR_SETS, PartDose
from setwright.training.facts.week import LOADED_FROM, Facts
from setwright.training.labels import session_label
from setwright.training.proposals.changing import (
    Change,
    session_in,
    text_of,
    whole_of,
    with_entry,
)
from setwright.training.proposals.model import Proposal, compared, proposal_id

MORE, FEWER = "more sets", "fewer sets"
RANK_MORE, RANK_FEWER = 50, 40
# At least so much of the plan was done lately: a part is not short because sessions were missed.
WELL_KEPT = 0.85
MOST_SETS = 6
# An exercise that a set is added to serves the part at least so well.
LEAST_SHARE = 0.5
# Exercises of a part losing strength beyond noise that speak for fewer sets.
LEAST_FALLING = 2
OVER_MINUTES = 1.0
MORE_SOURCES = ("weekly-volume-meta-2017-per-set", "weekly-volume-functional-form-2024")
FEWER_SOURCES = ("session-volume-puos-2025", "weekly-volume-over-20-sets-review-2022")


def propose(facts: Facts) -> Iterator[Proposal]:
    """One more set for the part furthest under; one less for the part furthest over."""
    if facts.plan is None or not facts.kept:
        return
    planned = sum(week.planned_sets for week in facts.kept)
    done = sum(week.done_sets for week in facts.kept)
    if planned and done / planned >= WELL_KEPT and not facts.under_way:
        yield from _more(facts, facts.plan, done, planned)
    yield from _fewer(facts, facts.plan)


def applied(plan: Plan, change: Change, _: object) -> Plan:
    """The plan with other sets of an exercise in one session."""
    sets = whole_of(change, "sets", 1, 20)
    return with_entry(
        plan,
        text_of(change, "exercise"),
        lambda entry: entry.model_copy(update={"sets": sets}),
        session_in(plan, text_of(change, "session")),
    )


def _more(facts: Facts, plan: Plan, done: int, planned: int) -> Iterator[Proposal]:
    falling = {one.exercise for one in facts.changes if one.fell}
    short = [
        one
        for one in facts.parts
        if one.standing in ("under", "enough")
        and one.planned < _wanted(one) - NEAR_SETS
        and one.part not in facts.sore_parts
    ]
    short.sort(key=lambda one: (one.done / max(_wanted(one), 1e-9), one.part))
    for one in short:
        place = _best_place(facts, plan, one.part, falling)
        if place is None:
            continue
        number, entry = place
        session = session_label(plan, number)
        change: Change = {
            "session": session, "exercise": entry.exercise, "sets": entry.sets + 1
        }  # fmt: skip
        after = applied(plan, change, None)
        name = catalogue.exercise(entry.exercise).name
        yield Proposal(
            proposal_id(MORE, one.part, facts.monday),
            MORE,
            one.part,
            f"One more set of {name} in {session} ({entry.sets} to {entry.sets + 1})",
            change,
            (
                f"{part(one.part).name}: {one.done:.1f} fractional sets done, {_wanted(one):g} "
                f"wanted; the plan gives {one.planned:.1f}.",
                f"{done} of {planned} planned sets were done over {len(facts.kept)} weeks, without "
                "pain there or strength lost beyond noise.",
            ),
            compared(plan, after, facts.intake, first=one.part),
            f"It stays at {one.planned:.1f} of {_wanted(one):g} sets a week.",
            (*MORE_SOURCES, *one.band.evidence),
            _wanted(one) - one.done,
            RANK_MORE,
        )
        return


def _wanted(one: PartDose) -> float:
    """What a part should get: a sound dose when it is emphasised, enough otherwise."""
    return one.band.good if one.band.aim == "emphasise" else one.band.least


def _best_place(
    facts: Facts, plan: Plan, short: str, falling: set[str]
) -> tuple[int, Entry] | None:
    """Session and exercise to add a set to: the largest share, where there are minutes to spare."""
    lived = rehearse(plan, facts.intake).sessions
    sore = [index()[one] for one in facts.sore_parts]
    hurting = {one.exercise for one in facts.pain}
    best: tuple[float, int, int] | None = None
    for number, session in enumerate(plan.sessions):
        minutes = session.minutes or _minutes(facts, session.day)
        for position, entry in enumerate(session.exercises):
            shares = catalogue.shares()[catalogue.row(entry.exercise)]
            share = float(shares[index()[short]])
            sets = [one for one in lived[number].sets if one.entry == position]
            each = sum(one.work_s for one in sets) / len(sets) + sum(entry.rest_s) / 2
            partners = entry.superset is not None
            if (
                share < LEAST_SHARE
                or entry.sets >= MOST_SETS
                or partners
                or entry.exercise in falling | hurting
                or bool(np.any(shares[sore] >= LOADED_FROM))
                or (lived[number].total_s + each) / 60 > minutes + OVER_MINUTES
            ):
                continue
            rank = (share, -entry.sets, -number)
            if best is None or rank > (best[0], best[1], best[2]):
                best = (share, -entry.sets, -number)
                place = number, entry
    return None if best is None else place


def _minutes(facts: Facts, day: str) -> float:
    return next((float(one.minutes) for one in facts.intake.days if one.day == day), 0.0)


def _fewer(facts: Facts, plan: Plan) -> Iterator[Proposal]:
    falling = {one.exercise: one for one in facts.changes if one.fell}
    rows = []
    for one in facts.parts:
        at = index()[one.part]
        lost = sorted(
            name for name in falling
            if catalogue.shares()[catalogue.row(name)][at] >= LOADED_FROM
        )  # fmt: skip
        if one.standing == "over" or (len(lost) >= LEAST_FALLING and one.done > one.band.good > 0):
            over = one.done - one.band.most if one.standing == "over" else 0.0
            rows.append((over, len(lost), one, lost))
    rows.sort(key=lambda row: (-row[0], -row[1], row[2].part))
    for over, _, one, lost in rows:
        held = [
            (float(catalogue.shares()[catalogue.row(entry.exercise)][index()[one.part]]),
             entry.sets, -number, entry)
            for number, session in enumerate(plan.sessions) for entry in session.exercises
            if entry.sets >= 2 and entry.superset is None
        ]  # fmt: skip
        held = [row for row in held if row[0] >= LOADED_FROM]
        if not held:
            continue
        _, sets, minus, entry = max(held, key=lambda row: row[:3])
        session = session_label(plan, -minus)
        change: Change = {"session": session, "exercise": entry.exercise, "sets": sets - 1}
        figures = ", ".join(
            f"{catalogue.exercise(name).name} {falling[name].percent:+.1f} %" for name in lost[:2]
        )
        first = (
            f"{part(one.part).name}: {one.done:.1f} fractional sets done, {one.band.most:g} are "
            "the most that is worth its time."
            if over > 0
            else f"{part(one.part).name}: {one.done:.1f} fractional sets done, "
            f"{one.band.good:g} are sound."
        )
        second = (f"Strength fell beyond noise: {figures}.",) if lost else ()
        yield Proposal(
            proposal_id(FEWER, one.part, facts.monday),
            FEWER,
            one.part,
            f"One set less of {catalogue.exercise(entry.exercise).name} in {session} "
            f"({sets} to {sets - 1})",
            change,
            (first, *second),
            compared(plan, applied(plan, change, None), facts.intake, first=one.part),
            "The sets stay; further ones give little, and cost recovery and minutes.",
            FEWER_SOURCES,
            over + len(lost),
            RANK_FEWER,
        )
        return
