"""A client as the log shows them up to a day: what every next step is computed from."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, time
from itertools import pairwise

from setwright.exercises.kit import GymKit, stock_of
from setwright.plan.client_folder import ClientFolder
from setwright.plan.log import Log, Withdrawn
from setwright.training.after_break import BREAK_DAYS
from setwright.training.agreed import eased_weeks
from setwright.training.attended import monday_of
from setwright.training.block import Block, block_of
from setwright.training.done import DoneSet
from setwright.training.from_log import Weights, done_sets
from setwright.training.lifter import Lifter
from setwright.training.past import Past, past_from_log
from setwright.training.seeds import seeds_of


@dataclass(frozen=True)
class Client:
    """One client on one day.

    Attributes:
        folder: as read.
        day: proleptic ordinal of today.
        done: working sets up to and with today.
        lifter: with all of them folded in.
        odd: sets that it did not believe, with the repetitions it had expected.
        past: what was done and reported, today included.
        block: the block of weeks that today is part of.
        gym: its loads.
        body_mass_kg: as last weighed, or None.
    """

    folder: ClientFolder
    day: int
    done: tuple[DoneSet, ...]
    lifter: Lifter
    odd: tuple[tuple[DoneSet, float], ...]
    past: Past
    block: Block
    gym: GymKit
    body_mass_kg: float | None

    def today(self) -> tuple[DoneSet, ...]:
        """Working sets of today, in order."""
        return tuple(one for one in self.done if one.day == self.day)


def client_on(folder: ClientFolder, today: date) -> Client:
    """What is known of a client at the end of a day, or in the middle of it.

    Args:
        folder: as read.
        today: later records of the log are left out, but for what they take back.
    """
    intake = folder.intake
    end = datetime.combine(today, time.max)
    log = Log(tuple(r for r in folder.log.records if r.at <= end or isinstance(r, Withdrawn)))
    done = done_sets(log, intake)
    past = past_from_log(log, intake, done)
    lifter = Lifter.start(intake.sex, intake.experience, seeds_of(intake))
    folds = [(one, lifter.fold(one)) for one in done]
    return Client(
        folder,
        today.toordinal(),
        done,
        lifter,
        tuple((one, fold.expected) for one, fold in folds if fold.odd),
        past,
        block_of(
            intake,
            block_start([start for start, _ in folder.plans], past.days, today),
            eased_weeks(folder.decisions),
        ),
        stock_of(intake.gym, intake.kit),
        Weights(log, intake).on(end),
    )


def block_start(plans: Sequence[date], trained: Sequence[int], today: date) -> int:
    """First day of the block: the Monday of the first plan, or of the return from a break.

    Args:
        plans: Mondays from which plans are in force, oldest first.
        trained: days trained, rising.
        today: the day that is asked about.
    """
    first = plans[0].toordinal() if plans else monday_of(today.toordinal())
    returns = [
        later
        for earlier, later in pairwise([*trained, today.toordinal()])
        if later - earlier >= BREAK_DAYS
    ]
    return max(monday_of(returns[-1]), first) if returns else first
