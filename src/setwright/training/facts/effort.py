"""How near failure sets really went: felt repetitions in reserve against real ones."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.exercises import catalogue
from setwright.training.client import Client
from setwright.training.effort import ENOUGH_CALLS
from setwright.training.lifter import Honesty


@dataclass(frozen=True)
class HonestyOf:
    """Honesty of the calls on the exercises of one movement pattern.

    Attributes:
        pattern: movement pattern.
        exercises: ids, most calls first.
        honesty: real less felt repetitions in reserve, of all of them together.
    """

    pattern: str
    exercises: tuple[str, ...]
    honesty: Honesty


def honesty_by_pattern(client: Client) -> tuple[HonestyOf, ...]:
    """Honesty of every pattern with enough calls, furthest off first.

    The estimate learns one bias for the person and one for each pattern, so that all exercises
    of a pattern have the same.
    """
    groups: dict[str, list[tuple[int, str, Honesty]]] = {}
    for exercise in client.past.outings:
        honesty = client.lifter.honesty(exercise)
        if honesty.calls:
            pattern = catalogue.exercise(exercise).pattern
            groups.setdefault(pattern, []).append((-honesty.calls, exercise, honesty))
    found = []
    for name, rows in groups.items():
        rows.sort(key=lambda row: row[:2])
        calls = -sum(row[0] for row in rows)
        if calls >= ENOUGH_CALLS:
            one = rows[0][2]
            together = Honesty(one.bias, one.low, one.high, calls)
            found.append(HonestyOf(name, tuple(row[1] for row in rows), together))
    return tuple(sorted(found, key=lambda one: (-abs(one.honesty.bias), one.pattern)))
