"""What a session leaves of the repetitions, set by set, before it is trained."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

import numpy as np

from setwright.exercises import catalogue
from setwright.plan.week import Entry
from setwright.rehearsal import clock
from setwright.rehearsal.fatigue import Fatigue, Sex, overlap
from setwright.rehearsal.rehearse import groups, rir_of


def order(entries: tuple[Entry, ...]) -> Iterator[tuple[int, int, float]]:
    """Sets in the order they are done: entry, number from 1, seconds since the last set's end.

    Partners of a superset alternate and rest together, as in the rehearsal.
    """
    for group in groups(entries):
        waited = sum(
            clock.change_seconds(catalogue.exercise(entries[index].exercise)) for index in group
        )
        for number in range(1, max(entries[index].sets for index in group) + 1):
            members = [index for index in group if entries[index].sets >= number]
            for place, index in enumerate(members):
                yield index, number, clock.PARTNER_S if place else waited
            going_on = [index for index in group if entries[index].sets > number]
            waited = max((sum(entries[index].rest_s) / 2 for index in going_on), default=0.0)


@lru_cache(maxsize=4096)
def kept_of(entries: tuple[Entry, ...], sex: Sex) -> tuple[tuple[float, ...], ...]:
    """Share of the fresh repetitions left at the start of every set, entry by entry.

    Repetitions are the middle of the band and effort is the plan's, so that the answer belongs
    to the plan alone; a person's own endurance is for the estimate to add.
    """
    exercises = [catalogue.exercise(entry.exercise) for entry in entries]
    shares = catalogue.shares()[[catalogue.row(entry.exercise) for entry in entries]]
    state = Fatigue(overlap(shares), np.array([one.whole_body for one in exercises]), sex)
    kept: list[list[float]] = [[] for _ in entries]
    for index, number, waited in order(entries):
        entry = entries[index]
        reps, rir = sum(entry.reps) / 2, rir_of(entry, number)
        state.rest(waited)
        kept[index].append(state.kept(index))
        last = number == entry.sets
        state.rest(clock.set_seconds(exercises[index], entry, reps, rir, last))
        state.work(index, reps, rir)
    return tuple(tuple(one) for one in kept)
