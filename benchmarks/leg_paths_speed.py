"""How long lengths and arms of the leg take at 1,000 poses, beside OpenSim in the same run.

Usage: ``python benchmarks/leg_paths_speed.py [LaiUhlrich2022.osim]``. OpenSim is timed when it can
be imported and the model file is given: by central differences of its lengths and by its own
moment-arm call (on fewer poses), and the faster of the two is the one compared with.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from importlib.util import find_spec
from pathlib import Path

import numpy as np

from setwright.mechanics.paths import Paths, load

POSES, OWN_CALL_POSES, ROUNDS = 1000, 20, 7


def best_s(work: Callable[[], object], rounds: int) -> float:
    """Shortest time of some rounds, s."""
    times = []
    for _ in range(rounds):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return min(times)


def peer(path: Path, leg: Paths, q: np.ndarray) -> None:
    """Times OpenSim on the same poses and compares."""
    sys.path.insert(0, str(Path(__file__).parent.parent / "scripts"))
    from leg_model import LegModel

    names = [element.element for element in leg.elements]
    model = LegModel(path, names)

    def own_call() -> None:
        for pose in q[:OWN_CALL_POSES]:
            model.lengths(pose)
            for name in names:
                model.own_arms(name)

    differences_s = best_s(lambda: model.lengths_and_arms(q), 1)
    own_s = best_s(own_call, 1) * POSES / OWN_CALL_POSES
    ours_s = best_s(lambda: leg.evaluate(q), ROUNDS)
    theirs_s = min(differences_s, own_s)
    print(f"OpenSim, differences of lengths: {differences_s:.2f} s")
    print(f"OpenSim, its own arm call:       {own_s:.1f} s (from {OWN_CALL_POSES} poses)")
    print(f"ours: {ours_s * 1e3:.2f} ms; {theirs_s / ours_s:.0f} times faster (target 100)")


def main(arguments: list[str]) -> None:
    """Times ours, and the peer where it is there."""
    start = time.perf_counter()
    leg = load("leg")
    print(
        f"reading leg.json: {(time.perf_counter() - start) * 1e3:.1f} ms, {len(leg.elements)} parts"
    )
    q = np.random.default_rng(1).uniform(leg.low_rad, leg.high_rad, (POSES, len(leg.coordinates)))
    ours_s = best_s(lambda: leg.evaluate(q), ROUNDS)
    print(f"ours, {POSES} poses: {ours_s * 1e3:.2f} ms")
    if arguments and find_spec("opensim"):
        peer(Path(arguments[0]), leg, q)
    else:
        print("OpenSim not timed: it needs the opensim wheel and the model file as an argument")


if __name__ == "__main__":
    main(sys.argv[1:])
