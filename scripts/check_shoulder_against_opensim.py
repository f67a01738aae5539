"""Hold the shipped shoulder figures against the model at poses nobody has fitted or chosen on.

    python scripts/check_shoulder_against_opensim.py ThoracoscapularShoulderModel.osim

Needs the ``opensim`` wheel beside the package. Prints errors element by element; leaves with 1 when
a length is off by more than 1 mm or an arm by more than 4 mm rms where its path has not jumped.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

import numpy as np

from setwright.mechanics.shoulder import elements, humerus_orientation, lengths_and_arms, within
from shoulder_elements import ELEMENTS
from shoulder_fit import JUMP_ARM_M, JUMP_LENGTH_M
from shoulder_region import draw
from shoulder_samples import Shoulder, measure

LENGTH_MM, ARM_MM = 1.0, 4.0


def main() -> int:
    """Measure, compare, report."""
    parser = argparse.ArgumentParser(description="Hold the shoulder figures against the model.")
    parser.add_argument("model", type=Path)
    parser.add_argument("--poses", type=int, default=500)
    asked = parser.parse_args()
    scapula, humerus = draw(asked.poses, 99)
    found = measure(asked.model, np.radians(scapula), humerus_orientation(*np.radians(humerus).T))
    inside = within(found.scapula, found.humerus)
    print(f"{inside.sum()} of {asked.poses} poses ({found.refused} refused by the model)")
    lengths, scapular, humeral = lengths_and_arms(found.scapula[inside], found.humerus[inside])
    names = Shoulder(asked.model).names
    worst = False
    for row, element in enumerate(elements()):
        column = names.index(ELEMENTS[element.element].path_of or element.element)
        length = lengths[:, row] - found.lengths[inside, column]
        arms = np.concatenate(
            [
                scapular[:, row] - found.scapular_arms[inside, column],
                humeral[:, row] - found.humeral_arms[inside, column],
            ],
            axis=-1,
        )
        jumped = (np.abs(length) > JUMP_LENGTH_M) | (np.abs(arms).max(axis=-1) > JUMP_ARM_M)
        rms, arm_rms = (1000 * np.sqrt(np.mean(e[~jumped] ** 2)) for e in (length, arms))
        worst |= rms > LENGTH_MM or arm_rms > ARM_MM
        print(
            f"{element.element:28} length {rms:5.2f} mm, arms {arm_rms:5.2f} mm, "
            f"jumped {100 * jumped.mean():4.1f} %"
        )
    return int(worst)


if __name__ == "__main__":
    sys.exit(main())
