"""Supersets that save minutes without one exercise tiring the other."""

from __future__ import annotations

from collections.abc import Callable
from itertools import combinations

from setwright.audit.criteria.supersets import MOST_OVERLAP, overlap
from setwright.exercises import catalogue
from setwright.plan.week import Entry

# Exercises that tax the whole person, or can pin the lifter, are done alone.
TOO_TAXING = 0.5
PAIR_REST_S = (90, 120)
LETTERS = "ABCDEFGH"


def shared_work(one: Entry, other: Entry) -> float:
    """Share of the smaller exercise's work that falls on parts both train, 0 to 1."""
    shares = catalogue.shares()
    return overlap(shares[catalogue.row(one.exercise)], shares[catalogue.row(other.exercise)])


def _may_pair(entry: Entry) -> bool:
    exercise = catalogue.exercise(entry.exercise)
    return exercise.whole_body < TOO_TAXING and not exercise.pins_lifter


def _tires(entries: tuple[Entry, ...], i: int, j: int) -> bool:
    """Whether moving exercise j up to i would tire a compound that stands between them."""
    return any(
        catalogue.exercise(between.exercise).kind == "compound"
        and shared_work(entries[j], between) > MOST_OVERLAP
        for between in entries[i + 1 : j]
    )


def pair(
    entries: tuple[Entry, ...], most_pairs: int, stays: Callable[[Entry], bool] = lambda _: False
) -> tuple[Entry, ...]:
    """Put the pairs that overlap least into supersets, partners side by side.

    Args:
        entries: a session in order, without supersets but those that stay.
        most_pairs: no more than this many pairs.
        stays: what is left as it is.
    """
    chances = sorted(
        (shared_work(entries[i], entries[j]), abs(entries[i].sets - entries[j].sets), i, j)
        for i, j in combinations(range(len(entries)), 2)
        if all(_may_pair(entries[one]) and not stays(entries[one]) for one in (i, j))
    )
    partner: dict[int, int] = {}
    for shared, uneven, i, j in chances:
        if len(partner) // 2 >= most_pairs or shared > MOST_OVERLAP or uneven > 1:
            continue
        if i not in partner and j not in partner and not _tires(entries, i, j):
            partner[i], partner[j] = j, i
    ordered: list[Entry] = []
    held = {entry.superset for entry in entries}
    letter = (one for one in LETTERS if one not in held)
    for i, entry in enumerate(entries):
        if i not in partner:
            ordered.append(entry)
        elif partner[i] > i:
            change = {"superset": next(letter), "rest_s": PAIR_REST_S}
            ordered.append(entry.model_copy(update=change))
            ordered.append(entries[partner[i]].model_copy(update=change))
    return tuple(ordered)
