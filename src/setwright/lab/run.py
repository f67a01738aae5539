"""Run the whole lab on one or two processes; the answer does not depend on how many."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from concurrent.futures import ProcessPoolExecutor

import numpy as np

from setwright.lab.closed_loop import COACHES, ClosedRun, run_closed
from setwright.lab.open_loop import OpenRun, run_open
from setwright.lab.published import published_checks
from setwright.lab.report import LabReport, sum_up_closed, sum_up_open

CHUNK = 5
CHECK_PEOPLE = 300

Lived = tuple[OpenRun, tuple[ClosedRun, ...]]


def live(seed: int, number: int, weeks: int) -> Lived:
    """One lifter in the open loop and under every coach.

    Args:
        seed: of the lab.
        number: of the lifter, from 0.
        weeks: to train.
    """

    def own() -> np.random.SeedSequence:
        return np.random.SeedSequence([seed, 1], spawn_key=(number,))

    return run_open(own(), weeks), tuple(run_closed(own(), weeks, name) for name in COACHES)


def _live_some(task: tuple[int, int, int, int]) -> list[Lived]:
    seed, first, last, weeks = task
    return [live(seed, number, weeks) for number in range(first, last)]


def run_lab(
    lifters: int,
    weeks: int,
    seed: int,
    jobs: int = 1,
    progress: Callable[[int], None] | None = None,
    check_people: int = CHECK_PEOPLE,
) -> LabReport:
    """Run everything.

    Args:
        lifters: 5 or more, so that some set is judged.
        weeks: 4 or more.
        seed: of everything.
        jobs: processes, 1 or 2.
        progress: called with the number of lifters that were just done.
        check_people: lifters for each published check.
    """
    tasks = [
        (seed, first, min(first + CHUNK, lifters), weeks) for first in range(0, lifters, CHUNK)
    ]
    lived: list[Lived] = []
    for some in _all(tasks, jobs):
        lived += some
        if progress is not None:
            progress(len(some))
    return LabReport(
        lifters,
        weeks,
        seed,
        published_checks(check_people, seed),
        sum_up_open([opened for opened, _ in lived]),
        sum_up_closed({name: [closed[k] for _, closed in lived] for k, name in enumerate(COACHES)}),
    )


def _all(tasks: list[tuple[int, int, int, int]], jobs: int) -> Iterator[list[Lived]]:
    if jobs <= 1:
        yield from map(_live_some, tasks)
        return
    with ProcessPoolExecutor(max_workers=jobs) as pool:
        yield from pool.map(_live_some, tasks)
