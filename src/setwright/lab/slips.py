"""How a set reaches the log: mostly as it was, now and then wrongly."""

from __future__ import annotations

from dataclasses import replace

from setwright.training.done import DoneSet

LB = 2.2046226218
UNIT, DIGITS, OTHER, TWICE = 0.005, 0.010, 0.014, 0.018
"""Cumulative chances of a wrong unit, swapped digits, a wrong exercise, a line entered twice."""


def as_logged(
    done: DoneSet, neighbour: str, chance: float, which: float
) -> tuple[tuple[DoneSet, ...], bool]:
    """The lines a set leaves in the log, and whether they are wrong.

    Args:
        done: as it was.
        neighbour: exercise it may be taken for.
        chance: uniform, decides the slip.
        which: uniform, decides between its kinds.
    """
    if chance >= TWICE:
        return (done,), False
    if chance < UNIT:
        factor = LB if which < 0.5 else 1.0 / LB
        kg = round(done.load_kg * factor, 1)
        return (_loaded(done, kg),), True
    if chance < DIGITS:
        if which < 0.5 and done.reps >= 10:
            swapped = float(str(int(done.reps))[::-1])
            return (replace(done, reps=max(swapped, 1.0)),), True
        kg = _swapped(done.load_kg)
        return (_loaded(done, kg),), True
    if chance < OTHER:
        return (replace(done, exercise=neighbour),), True
    return (done, replace(done, id=done.id + "-again")), True


def _loaded(done: DoneSet, kg: float) -> DoneSet:
    body = done.system_kg - done.load_kg
    return replace(done, load_kg=kg, system_kg=body + kg)


def _swapped(kg: float) -> float:
    whole, rest = int(kg), kg - int(kg)
    digits = list(str(whole))
    if len(digits) < 2:
        return kg * 10.0
    digits[-1], digits[-2] = digits[-2], digits[-1]
    return max(float(int("".join(digits))) + rest, 1.0)
