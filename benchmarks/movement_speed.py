"""How long a movement takes: the computation, the picture, and the command as a whole process."""

from __future__ import annotations

import subprocess
import sys
import tempfile
from functools import partial
from pathlib import Path

from audit_speed import median_s
from setwright.exercises.for_body import for_body
from setwright.exercises.movements import movement
from setwright.handout.drawing import save
from setwright.handout.motion_picture import motion_picture
from setwright.mechanics.body import Build

EXAMPLE = Path(__file__).parents[1] / "examples" / "movement.yaml"
NAMES = ("back-squat", "barbell-bench-press", "leg-extension")


def main() -> None:
    """Print the figures."""
    for name in NAMES:
        spent = median_s(partial(for_body, movement(name), Build()), 20)
        print(f"{name}: profile of 20 points {spent * 1000:.0f} ms (target 50)")
    found = for_body(movement("back-squat"), Build())
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "squat.svg")
        spent = median_s(lambda: save(motion_picture(found, "Back squat"), path), 3)
        print(f"picture: {spent * 1000:.0f} ms")
        words = [sys.executable, "-m", "setwright", "exercise", "--new", str(EXAMPLE)]

        def run(*more: str) -> None:
            subprocess.run([*words, *more], capture_output=True, check=True)

        print(f"exercise --new, whole process: {median_s(run, 9):.2f} s (target 1)")
        drawn = median_s(lambda: run("--picture", str(path)), 5)
        print(f"exercise --new --picture, whole process: {drawn:.2f} s")


if __name__ == "__main__":
    main()
