"""What a gym has and the loads it can make.

Masses are whole numbers of 10 micrograms inside, so that pounds (0.45359237 kg exactly) and
kilograms both stay exact.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Literal, Protocol

from setwright.exercises.gyms import FULL, PRESETS, Line
from setwright.exercises.model import Exercise, Kit, Loading

KG = 100_000_000
LB = 45_359_237
CARRIERS: dict[Loading, tuple[Kit, ...]] = {
    "barbell": ("barbell", "curl bar", "trap bar", "smith machine", "landmine"),
    "dumbbell": ("dumbbells",),
    "dumbbell pair": ("dumbbells",),
    "kettlebell": ("kettlebells", "dumbbells"),
}
# Kit that holds the person or the bar, never the load.
SUPPORTS: frozenset[Kit] = frozenset(
    (
        "rack", "bench", "incline bench", "back extension bench", "preacher bench", "dip station",
        "pull-up bar", "roman chair", "roller wheel", "nordic anchor", "step", "sliders",
        "suspension straps", "band", "assisted pull-up machine",
    )
)  # fmt: skip
Direction = Literal["down", "nearest"]


class StockLine(Protocol):
    """One kind of kit and its loads; figures are in ``unit`` whatever their names say."""

    @property
    def kit(self) -> Kit:
        """What it is."""

    @property
    def bar_kg(self) -> float | None:
        """Empty bar, carriage or first plate."""

    @property
    def plates_kg(self) -> tuple[float, ...]:
        """Pairs of plates."""

    @property
    def from_kg(self) -> float | None:
        """Smallest load."""

    @property
    def to_kg(self) -> float | None:
        """Largest load."""

    @property
    def step_kg(self) -> float | None:
        """Step between loads."""

    @property
    def loads_kg(self) -> tuple[float, ...]:
        """Loads one by one."""

    @property
    def unit(self) -> Literal["kg", "lb"]:
        """Unit of the figures."""

    @property
    def pairs(self) -> bool:
        """Two of each dumbbell or kettlebell."""


def to_kg(value: float, unit: Literal["kg", "lb"]) -> float:
    """Kilograms of a value in ``unit``, exact to 10 micrograms."""
    return _units(value, unit) / KG


def from_kg(value_kg: float, unit: Literal["kg", "lb"]) -> float:
    """A mass in kg, in ``unit``."""
    return value_kg if unit == "kg" else value_kg * KG / LB


def _units(value: float, unit: Literal["kg", "lb"]) -> int:
    # Thousandths first: a typed 2.205 is a decimal, not the binary float next to it.
    return round(value * 1000) * (LB if unit == "lb" else KG) // 1000


@dataclass(frozen=True)
class LoadChoice:
    """A load the kit can make, beside the one that was wanted.

    Attributes:
        target_kg: load wanted.
        load_kg: load chosen, or None when nothing in reach is light enough.
        text: how to make it, for example ``20 kg bar + 20, 2.5 a side``.
    """

    target_kg: float
    load_kg: float | None
    text: str


@dataclass(frozen=True)
class GymKit:
    """The kit of one gym."""

    lines: tuple[Line, ...]

    @cached_property
    def has(self) -> frozenset[Kit]:
        """Everything there is."""
        return frozenset(line.kit for line in self.lines)

    def can_do(self, exercise: Exercise) -> bool:
        """Whether one of the exercise's alternatives is there."""
        return self._alternative(exercise) is not None

    def loads(self, exercise: Exercise) -> tuple[float, ...] | None:
        """Reachable loads in kg as lifted (a hand for dumbbells), rising.

        Returns:
            None when the load has no steps to keep to: bands, kit without figures, or kit that
            is not there.
        """
        masses = self._masses(exercise)
        return None if masses is None else tuple(mass / KG for mass in masses)

    def _alternative(self, exercise: Exercise) -> tuple[Kit, ...] | None:
        has = self.has
        for kit in exercise.kit:
            if has.issuperset(kit) and self._enough_pairs(exercise, kit):
                return kit
        return None

    def _enough_pairs(self, exercise: Exercise, kit: tuple[Kit, ...]) -> bool:
        if exercise.loading != "dumbbell pair":
            return True
        return any(line.pairs for line in self.lines if line.kit == "dumbbells")

    def _line(self, exercise: Exercise) -> Line | None:
        kit = self._alternative(exercise)
        if kit is None:
            return None
        wanted: Iterable[Kit] = CARRIERS.get(
            exercise.loading, tuple(item for item in kit if item not in SUPPORTS)
        )
        for item in wanted:
            if item in kit:
                return next(line for line in self.lines if line.kit == item)
        return None

    def _masses(self, exercise: Exercise) -> tuple[int, ...] | None:
        if exercise.loading == "band":
            return None
        if exercise.loading == "bodyweight":
            belt = next((line for line in self.lines if line.kit == "weight belt"), None)
            return tuple(sorted({0, *(_masses_of(belt) if belt else ())}))
        line = self._line(exercise)
        if line is None:
            return None
        return _masses_of(line) or None


@lru_cache(maxsize=512)
def _masses_of(line: Line) -> tuple[int, ...]:
    """Loads of one line in units of 10 micrograms, rising."""
    if line.loads_kg:
        return tuple(sorted({_units(load, line.unit) for load in line.loads_kg}))
    if line.plates_kg or line.bar_kg is not None:
        bar = _units(line.bar_kg or 0.0, line.unit)
        return tuple(sorted(bar + 2 * side for side in _sides(line.plates_kg, line.unit)))
    if line.from_kg is None or line.to_kg is None or line.step_kg is None:
        return ()
    first, last = _units(line.from_kg, line.unit), _units(line.to_kg, line.unit)
    return tuple(range(first, last + 1, max(_units(line.step_kg, line.unit), 1)))


@lru_cache(maxsize=128)
def _sides(plates: tuple[float, ...], unit: Literal["kg", "lb"]) -> dict[int, tuple[float, ...]]:
    """Every mass one side can carry, with the fewest plates that make it, heaviest first."""
    best: dict[int, tuple[float, ...]] = {0: ()}
    for plate in sorted(plates, reverse=True):
        mass = _units(plate, unit)
        for total, used in list(best.items()):
            more = (*used, plate)
            if len(more) < len(best.get(total + mass, more + more)):
                best[total + mass] = more
    return best


def stock_of(gym: str, entries: Sequence[StockLine] = ()) -> GymKit:
    """The kit of a gym by name, with the coach's own entries in place of the usual ones.

    Args:
        gym: ``full gym``, ``home dumbbells``, ``machines``, ``bodyweight`` or ``listed``.
        entries: what the coach listed; ``listed`` has these and nothing else.

    Raises:
        KeyError: an unknown gym.
    """
    own = tuple(_line(entry) for entry in entries)
    listed = {line.kit for line in own}
    return GymKit((*own, *(line for line in PRESETS[gym] if line.kit not in listed)))


def _line(entry: StockLine) -> Line:
    """A plain, hashable copy; an entry without figures takes the usual ones of a full gym."""
    line = Line(
        entry.kit, entry.bar_kg, tuple(entry.plates_kg), entry.from_kg, entry.to_kg,
        entry.step_kg, tuple(entry.loads_kg), entry.unit, entry.pairs,
    )  # fmt: skip
    bare = line.bar_kg is None and line.from_kg is None and not (line.plates_kg or line.loads_kg)
    if not bare:
        return line
    usual = next(one for one in FULL if one.kit == entry.kit)
    return Line(
        usual.kit, usual.bar_kg, usual.plates_kg, usual.from_kg, usual.to_kg,
        usual.step_kg, usual.loads_kg, usual.unit, entry.pairs,
    )  # fmt: skip


def nearest_load(
    exercise: Exercise, target_kg: float, gym: GymKit, direction: Direction = "down"
) -> LoadChoice:
    """The load the kit can make for a wanted one; ties go down.

    Args:
        exercise: what is lifted.
        target_kg: load wanted, as lifted.
        gym: the kit.
        direction: ``down`` never exceeds the target; ``nearest`` may.
    """
    masses = gym._masses(exercise)
    if masses is None:
        return LoadChoice(target_kg, target_kg, "any load")
    target = round(target_kg * KG)
    under = [mass for mass in masses if mass <= target]
    over = [mass for mass in masses if mass > target]
    chosen = under[-1] if under else None
    if direction == "nearest" and over and (chosen is None or over[0] - target < target - chosen):
        chosen = over[0]
    if chosen is None:
        lightest = masses[0] / KG
        return LoadChoice(target_kg, None, f"the lightest there is {_figure(lightest)} kg")
    return LoadChoice(target_kg, chosen / KG, _recipe(exercise, chosen, gym))


def _recipe(exercise: Exercise, mass: int, gym: GymKit) -> str:
    # Kit under a body-weight exercise holds the person, even a barbell; the load is on a belt.
    line = None if exercise.loading == "bodyweight" else gym._line(exercise)
    if line is None:
        return "body mass alone" if mass == 0 else f"{_figure(mass / KG)} kg on a belt"
    unit = LB if line.unit == "lb" else KG
    total = f"{_figure(mass / unit)} {line.unit}"
    if line.loads_kg or not (line.plates_kg or line.bar_kg is not None):
        return f"{total} a hand" if exercise.loading == "dumbbell pair" else total
    bar = _units(line.bar_kg or 0.0, line.unit)
    plates = _sides(line.plates_kg, line.unit)[(mass - bar) // 2]
    empty = f"{_figure(bar / unit)} {line.unit} empty"
    if not plates:
        return empty
    return f"{empty} + {', '.join(_figure(plate) for plate in plates)} {line.unit} a side"


def _figure(value: float) -> str:
    return f"{value:.3f}".rstrip("0").rstrip(".")
