"""Usual gyms, declared as data. Loads are common practice; a coach's own entries replace them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from setwright.exercises.model import Kit


@dataclass(frozen=True)
class Line:
    """One kind of kit and its loads, plain and hashable; figures are in ``unit``."""

    kit: Kit
    bar_kg: float | None = None
    plates_kg: tuple[float, ...] = ()
    from_kg: float | None = None
    to_kg: float | None = None
    step_kg: float | None = None
    loads_kg: tuple[float, ...] = ()
    unit: Literal["kg", "lb"] = "kg"
    pairs: bool = True


PLATES = (20.0,) * 5 + (15.0, 10.0, 10.0, 5.0, 5.0, 2.5, 2.5, 1.25)
MANY_PLATES = (20.0,) * 10 + (15.0, 10.0, 10.0, 5.0, 5.0, 2.5, 2.5, 1.25)
DUMBBELLS = (*(float(kg) for kg in range(1, 11)), *(float(kg) for kg in range(12, 51, 2)))
HOME_DUMBBELLS = tuple(float(kg) for kg in range(2, 25, 2))
KETTLEBELLS = (4.0, 6.0, 8.0, 10.0, 12.0, 16.0, 20.0, 24.0, 28.0, 32.0)


def _stack(kit: Kit, top_kg: float = 100.0, step_kg: float = 5.0) -> Line:
    return Line(kit, from_kg=step_kg, to_kg=top_kg, step_kg=step_kg)


def _plates(kit: Kit, carriage_kg: float) -> Line:
    return Line(kit, bar_kg=carriage_kg, plates_kg=MANY_PLATES)


FREE = (
    Line("barbell", bar_kg=20.0, plates_kg=PLATES),
    Line("curl bar", bar_kg=10.0, plates_kg=PLATES),
    Line("trap bar", bar_kg=25.0, plates_kg=PLATES),
    Line("landmine", bar_kg=20.0, plates_kg=PLATES),
    Line("dumbbells", loads_kg=DUMBBELLS),
    Line("kettlebells", loads_kg=KETTLEBELLS),
    Line("weight belt", loads_kg=(1.25, 2.5, 5.0, 7.5, 10.0, 12.5, 15.0, 20.0, 25.0, 30.0, 40.0)),
    Line("tibialis bar", bar_kg=2.0, plates_kg=(5.0, 2.5, 1.25)),
    Line("neck harness", loads_kg=(0.0, 1.25, 2.5, 5.0, 7.5, 10.0, 15.0, 20.0)),
)
SUPPORT = tuple(
    Line(kit)
    for kit in (
        "rack", "bench", "incline bench", "back extension bench", "preacher bench", "dip station",
        "pull-up bar", "roman chair", "roller wheel", "nordic anchor", "step", "sliders", "band",
        "suspension straps",
    )
)  # fmt: skip
MACHINES = (
    _stack("cable", 100.0, 2.5),
    Line("smith machine", bar_kg=15.0, plates_kg=PLATES),
    _plates("leg press", 50.0),
    _plates("hack squat", 40.0),
    _plates("belt squat", 20.0),
    _plates("seated calf machine", 10.0),
    _stack("leg extension", 150.0),
    _stack("seated leg curl", 120.0),
    _stack("lying leg curl", 100.0),
    _stack("standing leg curl", 80.0),
    _stack("standing calf machine", 200.0),
    _stack("hip abductor machine", 130.0),
    _stack("hip adductor machine", 130.0),
    _stack("multi-hip machine", 100.0),
    _stack("glute machine", 130.0),
    _stack("chest press machine", 150.0),
    _plates("incline press machine", 10.0),
    _stack("shoulder press machine", 120.0),
    _stack("fly machine", 120.0),
    _stack("rear fly machine", 120.0),
    _stack("lateral raise machine", 80.0),
    _stack("pulldown", 120.0),
    Line("assisted pull-up machine"),
    _stack("seated row machine", 120.0),
    _plates("chest supported row", 10.0),
    _stack("pullover machine", 120.0),
    _stack("curl machine", 80.0),
    _stack("triceps machine", 100.0),
    _stack("abdominal machine", 100.0),
    _plates("shrug machine", 20.0),
)
FULL = (*FREE, *SUPPORT, *MACHINES)
PRESETS: dict[str, tuple[Line, ...]] = {
    "full gym": FULL,
    "machines": (
        *MACHINES,
        *(
            line
            for line in SUPPORT
            if line.kit in ("bench", "step", "roman chair", "back extension bench")
        ),
    ),
    "home dumbbells": (
        Line("dumbbells", loads_kg=HOME_DUMBBELLS),
        Line("bench"),
        Line("incline bench"),
        Line("step"),
    ),
    "bodyweight": (Line("step"),),
    "listed": (),
}
