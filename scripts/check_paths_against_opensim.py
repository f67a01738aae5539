"""Holds leg.json against the leg model itself, at poses neither fit nor test has seen.

Usage: ``python scripts/check_paths_against_opensim.py LaiUhlrich2022.osim [seed]``, where
``opensim`` 4.6, numpy and pydantic can be imported. Ends with an error when a length is off by
1.5 mm or an arm by 10 mm anywhere in the clear region, or an arm by 1 mm root mean square.
"""

from __future__ import annotations

import sys
from pathlib import Path

import numpy as np

import leg_elements
from leg_model import LegModel
from path_fitting import sha256
from setwright.mechanics.paths import load

POSES = 1500
LENGTH_M, ARM_M, ARM_RMS_M = 1.5e-3, 1e-2, 1e-3


def main(path: Path, seed: int) -> None:
    """Compares, prints one line an element, and says whether all hold."""
    leg = load("leg")
    if sha256(path) != leg.origin.sha256:
        sys.exit(f"{path.name} is not the file leg.json was made from")
    names = [element.element for element in leg.elements]
    model = LegModel(path, names)
    q = np.random.default_rng(seed).uniform(
        leg.low_rad, leg.high_rad, (POSES, len(leg.coordinates))
    )
    lengths, arms = leg.evaluate(q)
    their_lengths, their_arms = model.lengths_and_arms(q)
    failed = []
    for place, name in enumerate(names):
        clear = leg_elements.is_clear(name, q)
        length = np.abs(lengths - their_lengths)[clear, place]
        arm = np.abs(arms - their_arms)[clear, place]
        arm_rms = float(np.sqrt(np.mean(arm**2, axis=0)).max())
        print(
            f"{name:14} length {length.max() * 1e3:5.2f} mm at most, arms {arm.max() * 1e3:5.2f} mm"
            f" at most, {arm_rms * 1e3:.2f} mm rms about the worst coordinate"
        )
        if length.max() > LENGTH_M or arm.max() > ARM_M or arm_rms > ARM_RMS_M:
            failed.append(name)
    if failed:
        sys.exit(f"too far off: {', '.join(failed)}")
    print("all within bounds")


if __name__ == "__main__":
    main(Path(sys.argv[1]), int(sys.argv[2]) if len(sys.argv) > 2 else 99)
