"""How long a full profile takes: one exercise at 20 points of its range, and the catalogue.

    python benchmarks/profile_speed.py [--catalogue]

Prints the median time of the profile of every exercise beside a baseline of the same run: the time
numpy needs for one singular value decomposition of a 300 x 300 matrix, so that machines compare.
Targets: 50 ms or less for one profile; 5 minutes or less for the catalogue with 200 draws each on
two cores (``--catalogue``).
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path
from statistics import median
from time import perf_counter

import numpy as np

from setwright.exercises.for_body import for_body
from setwright.exercises.movements import movement
from setwright.exercises.profile_cache import shipped
from setwright.mechanics.body import Build

ROOT = Path(__file__).parent.parent
REPEATS = 5


def seconds(work) -> float:  # type: ignore[no-untyped-def]
    """Median time of some calls."""
    times = []
    for _ in range(REPEATS):
        start = perf_counter()
        work()
        times.append(perf_counter() - start)
    return median(times)


def main() -> None:
    """Print the table."""
    matrix = np.random.default_rng(1).standard_normal((300, 300))
    baseline = seconds(lambda: np.linalg.svd(matrix))
    build = Build()
    times = {}
    for ident in shipped().profiles:
        declared = movement(ident)
        for_body(declared, build)
        times[ident] = seconds(lambda declared=declared: for_body(declared, build))
    slowest = sorted(times, key=lambda ident: -times[ident])[:5]
    print(f"baseline: one decomposition {baseline * 1000:.1f} ms")
    print(
        f"{len(times)} profiles of 20 points: median {median(times.values()) * 1000:.1f} ms, "
        f"{median(times.values()) / baseline:.2f} x baseline"
    )
    for ident in slowest:
        print(f"  slowest {ident}: {times[ident] * 1000:.1f} ms")
    over = [ident for ident in times if times[ident] > 0.05]
    print(f"over 50 ms: {len(over)} of {len(times)}")
    if "--catalogue" in sys.argv:
        start = perf_counter()
        subprocess.run([sys.executable, str(ROOT / "scripts" / "compile_profiles.py")], check=True)
        print(f"the catalogue with 200 draws each: {perf_counter() - start:.0f} s (target 300)")


if __name__ == "__main__":
    main()
