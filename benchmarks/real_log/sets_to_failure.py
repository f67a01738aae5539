"""The open log of sets to failure, and the estimate followed through it person by person."""

from __future__ import annotations

import csv
import math
from collections import defaultdict
from dataclasses import dataclass
from pathlib import Path

from setwright.rehearsal.strength import scale
from setwright.training.belief import Belief
from setwright.training.constants import Constants, setting
from setwright.training.folding import Effort, Folded, fold_set
from setwright.training.reading import predicted
from setwright.training.scatter import Scatter

DATA = Path(__file__).resolve().parents[3] / "shared" / "data" / "sets-to-failure.csv"
SETTING = "supervised machines"
WIDE = 3.0


@dataclass(frozen=True)
class Row:
    """A set: day since the first session, machine, its load, repetitions to failure."""

    day: int
    exercise: str
    load_kg: float
    reps: float


@dataclass(frozen=True)
class Told:
    """A set with what was expected of it."""

    person: int
    before: int
    got: float
    median: float
    centre: float
    low: float
    high: float
    surprise: float


def people(path: Path = DATA) -> dict[int, list[Row]]:
    """The sets of each person in the order of time; rows with an empty cell are left out."""
    found: dict[int, list[tuple[int, int, Row]]] = defaultdict(list)
    with path.open(encoding="utf-8", newline="") as lines:
        for place, row in enumerate(csv.DictReader(lines)):
            if row["load_kg"] and row["repetitions"]:
                day = int(row["day"])
                one = Row(day, row["exercise"], float(row["load_kg"]), float(row["repetitions"]))
                found[int(row["person"])].append((day, place, one))
    return {
        who: [row for _, _, row in sorted(rows, key=lambda r: r[:2])] for who, rows in found.items()
    }


def follow(who: int, rows: list[Row], constants: Constants) -> list[Told]:
    """One person's sets, each predicted from those before it.

    Every machine letter is an exercise of its own; its class is the name without the letter.
    """
    belief, scatter = Belief("intermediate", constants), Scatter(constants)
    a = scale("general")
    first = math.log1p((constants.first_reps - 1.0) / a)
    before: dict[str, int] = defaultdict(int)
    streak: dict[str, float] = defaultdict(float)
    told = []
    for row in rows:
        key = row.exercise
        belief.to_day(row.day)
        if key not in belief.own:
            level = math.log(row.load_kg) + first
            belief.add(key, key.rsplit(" ", 1)[0], math.log(a), level, constants.level_sd)
        done = fold_set(belief, scatter, Effort(key, row.load_kg), row.reps, streak[key])
        streak[key] = done.streak
        told.append(_told(who, before[key], row.reps, done, constants))
        before[key] += 1
    return told


def _told(who: int, before: int, got: float, done: Folded, constants: Constants) -> Told:
    seen, ahead = done.before, predicted(done.before, done.scale, done.half_width)
    spread = math.sqrt(seen.spread * done.scale)
    ends = [(seen.shown(got + half) - seen.u) / spread for half in (0.5, -0.5)]
    share = constants.wide_share
    chance = (1 - share) * (_normal(ends[0]) - _normal(ends[1])) + share * (
        _normal(ends[0] / WIDE) - _normal(ends[1] / WIDE)
    )
    centre = max(seen.reps(seen.u), 0.0)
    return Told(
        who, before, got, ahead.median, centre, ahead.low, ahead.high, -math.log(max(chance, 1e-5))
    )


def _normal(z: float) -> float:
    return 0.5 * math.erfc(-z / math.sqrt(2.0))


def all_told(log: dict[int, list[Row]], constants: Constants | None = None) -> list[Told]:
    """Everybody."""
    used = constants or setting(SETTING)
    return [one for who, rows in log.items() for one in follow(who, rows, used)]
