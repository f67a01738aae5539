"""Strength on every exercise of the log, as it stands on a day."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.exercises import catalogue
from setwright.rehearsal.strength import OneRm
from setwright.training.client import Client
from setwright.training.effort import ENOUGH_CALLS
from setwright.training.ladder import ladder
from setwright.training.lifter import Honesty, Trend


@dataclass(frozen=True)
class StrengthNow:
    """One exercise.

    Attributes:
        exercise: id.
        lifted: 1RM-equivalent as lifted, kg: a hand for dumbbell pairs, added to body weight,
            below 0 for help; on the day asked about.
        system: the same as the load the muscles move.
        trend: gain under way, percent a week.
        honesty: of the calls of repetitions in reserve; None before enough calls.
        calls: made so far.
        sets: working sets in the log.
        last_day: ordinal of the last one.
    """

    exercise: str
    lifted: OneRm
    system: OneRm
    trend: Trend
    honesty: Honesty | None
    calls: int
    sets: int
    last_day: int


def strength_now(client: Client, exercise: str | None = None) -> tuple[StrengthNow, ...]:
    """Strength on the exercises of the log, most trained first.

    Args:
        client: up to the day asked about.
        exercise: only this one.
    """
    counts: dict[str, int] = {}
    last: dict[str, int] = {}
    for one in client.done:
        counts[one.exercise] = counts.get(one.exercise, 0) + 1
        last[one.exercise] = one.day
    found = []
    for name in sorted(counts, key=lambda key: (-counts[key], key)):
        system = client.lifter.one_rm(name, client.day)
        if system is None or exercise not in (None, name):
            continue
        honesty = client.lifter.honesty(name)
        found.append(
            StrengthNow(
                name,
                _as_lifted(client, name, system),
                system,
                client.lifter.trend(name, client.day),
                honesty if honesty.calls >= ENOUGH_CALLS else None,
                honesty.calls,
                counts[name],
                last[name],
            )
        )
    return tuple(found)


def _as_lifted(client: Client, name: str, system: OneRm) -> OneRm:
    steps = ladder(catalogue.exercise(name), client.gym)
    mass = client.body_mass_kg or 0.0
    median, low, high = (
        steps.external(kg, mass) for kg in (system.median, system.low, system.high)
    )
    return OneRm(median, low, high, system.sd / steps.hands)
