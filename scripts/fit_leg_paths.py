"""Writes src/setwright/mechanics/paths/leg.json from the leg model.

Usage: ``python scripts/fit_leg_paths.py LaiUhlrich2022.osim`` (some five minutes) in an environment
with ``opensim`` 4.6 and numpy; ``opensim`` is needed here only, never at run time.

The model file: opencap-org/opencap-core, opensimPipeline/Models/LaiUhlrich2022.osim @ e1a44f3,
sha256 7499645500d4bca9269f27fd669bd3ed3abbeccd549d87f86cd01119a1a24366. Its hash is checked.
"""

from __future__ import annotations

import sys
from pathlib import Path

import numpy as np

import leg_elements
from leg_model import LegModel
from path_fitting import Fit, Samples, fit, sha256, write

OUT = Path(__file__).parent.parent / "src/setwright/mechanics/paths/leg.json"
SEED = 20
FITTED, CHOSEN, TESTED = 6144, 2048, 2048
LEAST_ARM_M = 2e-4  # a coordinate whose arm never passes this does not move the element


def poses(count: int, seed: int, crowded: bool) -> np.ndarray:
    """(count, C) scaled poses; ``crowded`` ones lie denser near the ends, where fits go astray."""
    u = np.random.default_rng(seed).uniform(-1, 1, (count, len(leg_elements.RANGES)))
    return np.sin(u * np.pi / 2) if crowded else u


class Sampled:
    """Lengths and arms of every element at one set of poses, and of one element beyond its jumps.

    Attributes:
        u: (N, C) scaled poses.
    """

    def __init__(self, model: LegModel, u: np.ndarray) -> None:
        self.model, self.u = model, u
        self.q = leg_elements.MIDDLE + u * leg_elements.HALF
        self.lengths, self.arms = model.lengths_and_arms(self.q)

    def of(self, element: str, columns: list[int], clear_only: bool) -> Samples:
        """The samples of one element over the coordinates it depends on.

        Outside the region where the model's path is clear of jumps the length goes on straight,
        with the arms of the nearest clear pose; with ``clear_only`` those poses are left out.
        """
        place = self.model.elements.index(element)
        lengths, arms = self.lengths[:, place].copy(), self.arms[:, place].copy()
        nearest = leg_elements.nearest_clear(element, self.q)
        beyond = np.abs(nearest - self.q) > 1e-12
        rows = np.flatnonzero(beyond.any(axis=1))
        known = np.ones_like(arms, dtype=bool)
        kept = np.ones(len(self.q), dtype=bool)
        if clear_only:
            kept[rows] = False
        elif len(rows):
            edge, edge_arms = self.model.lengths_and_arms(nearest[rows], only=element)
            step = self.q[rows] - nearest[rows]
            lengths[rows] = edge[:, 0] - (edge_arms[:, 0] * step).sum(axis=1)
            arms[rows] = edge_arms[:, 0]
            known[rows] = beyond[rows]
        return Samples(
            u=self.u[np.ix_(kept, columns)],
            half=leg_elements.HALF[columns],
            lengths=lengths[kept],
            arms=arms[np.ix_(kept, columns)],
            arm_known=known[np.ix_(kept, columns)],
        )


def entry(model: LegModel, element: str, columns: list[int], found: Fit) -> dict[str, object]:
    """One element as the file holds it."""
    return {
        "element": element,
        "part": leg_elements.PARTS[element],
        **model.parameters(element),
        "coordinates": [leg_elements.RANGES[column][0] for column in columns],
        "powers": found.powers.tolist(),
        "coefficients_m": found.coefficients.tolist(),
        "rms_mm": found.rms_mm,
        "max_mm": found.max_mm,
        "arm_rms_mm": found.arm_rms_mm,
        "ratio_anchor": leg_elements.ANCHORS.get(element),
        "note": leg_elements.NOTES.get(element, ""),
    }


def main(path: Path) -> None:
    """Fits every element and writes the file."""
    if sha256(path) != leg_elements.ORIGIN["sha256"]:
        sys.exit(f"{path.name} is not the file whose hash stands in leg_elements.py")
    model = LegModel(path, list(leg_elements.PARTS))
    crowded = Sampled(model, poses(FITTED, SEED, crowded=True))
    chosen = Sampled(model, poses(CHOSEN, SEED + 1, crowded=False))
    tested = Sampled(model, poses(TESTED, SEED + 2, crowded=False))
    entries = []
    for element, place in zip(model.elements, range(len(model.elements)), strict=True):
        clear = leg_elements.is_clear(element, crowded.q)
        reach = np.abs(crowded.arms[clear, place]).max(axis=0)
        columns = [int(column) for column in np.flatnonzero(reach > LEAST_ARM_M)]
        found = fit(
            crowded.of(element, columns, clear_only=False),
            chosen.of(element, columns, clear_only=True),
            tested.of(element, columns, clear_only=True),
            joints=[leg_elements.RANGES[column][0].split()[0] for column in columns],
        )
        entries.append(entry(model, element, columns, found))
        print(
            f"{element:14} {len(found.powers):4} terms, degree {found.powers.sum(axis=1).max():2},"
            f" length {found.rms_mm:.2f} mm rms, {found.max_mm:.2f} at most,"
            f" arms {found.arm_rms_mm:.2f} mm rms",
            flush=True,
        )
    ranges = [
        {"name": name, "low_deg": low, "high_deg": high} for name, low, high in leg_elements.RANGES
    ]
    head = {"setwright": "paths/1", "model": leg_elements.ORIGIN, "coordinates": ranges}
    write(OUT, head, entries)
    print(f"{OUT.name}: {OUT.stat().st_size / 1024:.0f} KB")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
