"""Fit the elbow muscles of the arm model: `python scripts/fit_arm_paths.py arm26.osim`.

Needs the `opensim` wheel (4.6) and numpy, in any environment; the project itself needs neither
wheel nor model. The model: Models/Arm26/arm26.osim of opensim-org/opensim-models @ 20a888b,
CC BY 3.0. Writes scripts/lumps/arm26.json, which scripts/declare_lump_paths.py joins with the
declared forearm into src/setwright/mechanics/paths/arm.json.
"""

import hashlib
import json
import sys
from pathlib import Path

import numpy as np

SHA256 = "e2224d0044eb393b05d64926c3fa1682c451a9adc7f510e5517ef9958d3d41b9"
PARTS = {
    "TRIlong": "triceps-long-head",
    "TRIlat": "triceps-lateral-head",
    "TRImed": "triceps-medial-head",
    "BIClong": "biceps-long-head",
    "BICshort": "biceps-short-head",
    "BRA": "brachialis",
}
# The model says 0 to 130 degrees; its paths stay smooth to 145 and flip beyond, and below 0.
LOW_DEG, HIGH_DEG = 0.0, 145.0
STEP_RAD = 2e-3
DEGREES = range(4, 10)
ARM_RMS_MM = 0.4  # the lowest degree whose arms come this near is taken, else the best


def tabulate(path: Path) -> tuple[dict[str, dict[str, float]], np.ndarray, np.ndarray, np.ndarray]:
    """Parameters, angles (rad), lengths (A, M) and central-difference arms (A, M), m."""
    import opensim

    opensim.Logger.setLevelString("error")
    model = opensim.Model(str(path))
    state = model.initSystem()
    coordinate = model.getCoordinateSet().get("r_elbow_flex")
    muscles = [model.getMuscles().get(name) for name in PARTS]
    parameters = {
        m.getName(): {
            "f0_N": m.getMaxIsometricForce(),
            "l0_m": m.getOptimalFiberLength(),
            "slack_m": m.getTendonSlackLength(),
            "pennation_rad": m.getPennationAngleAtOptimalFiberLength(),
        }
        for m in muscles
    }
    angles = np.radians(np.arange(LOW_DEG, HIGH_DEG + 0.1, 0.5))
    found = []
    for angle in angles:
        three = []
        for shift in (-STEP_RAD, 0.0, STEP_RAD):
            coordinate.setValue(state, angle + shift, False)
            model.realizePosition(state)
            three.append([m.getGeometryPath().getLength(state) for m in muscles])
        found.append(three)
    table = np.array(found)
    return parameters, angles, table[:, 1], -(table[:, 2] - table[:, 0]) / (2 * STEP_RAD)


def fit(u: np.ndarray, half: float, length: np.ndarray, arm: np.ndarray) -> dict[str, object]:
    """The lowest degree that is good enough, fitted on every second angle, judged on the others."""
    tries = []
    for degree in DEGREES:
        c = np.polynomial.polynomial.polyfit(u[::2], length[::2], degree)
        held = np.polynomial.polynomial.polyval(u[1::2], c) - length[1::2]
        slope = np.polynomial.polynomial.polyval(u, np.polynomial.polynomial.polyder(c)) / half
        # The first and last angle differ across a path's flip, so they do not count.
        arm_rms = float(np.sqrt(np.mean((-slope - arm)[2:-2] ** 2)) * 1e3)
        tries.append((arm_rms, degree, c, held))
        if arm_rms < ARM_RMS_MM:
            break
    arm_rms, degree, c, held = min(tries, key=lambda one: one[0])
    return {
        "powers": [[p] for p in range(degree + 1)],
        "coefficients_m": [round(float(x), 9) for x in c],
        "rms_mm": round(float(np.sqrt(np.mean(held**2)) * 1e3), 4),
        "max_mm": round(float(np.abs(held).max() * 1e3), 4),
        "arm_rms_mm": round(arm_rms, 4),
    }


def main() -> None:
    """Fit and write."""
    path = Path(sys.argv[1])
    if hashlib.sha256(path.read_bytes()).hexdigest() != SHA256:
        sys.exit(f"{path} is not the file these figures come from (sha256 {SHA256})")
    parameters, angles, lengths, arms = tabulate(path)
    half = float(angles[-1] - angles[0]) / 2
    u = (angles - angles[0]) / half - 1
    elements = [
        {
            "element": name,
            "part": part,
            **{key: round(value, 6) for key, value in parameters[name].items()},
            "coordinates": ["elbow flexion"],
            **fit(u, half, lengths[:, i], arms[:, i]),
            "ratio_anchor": None,
        }
        for i, (name, part) in enumerate(PARTS.items())
    ]
    document = {
        "model": {
            "file": "arm26.osim",
            "sha256": SHA256,
            "from": "opensim-org/opensim-models : Models/Arm26/arm26.osim @ 20a888b",
            "licence": "CC BY 3.0",
        },
        "coordinate": {"name": "elbow flexion", "low_deg": LOW_DEG, "high_deg": HIGH_DEG},
        "elements": elements,
    }
    target = Path(__file__).parent / "lumps" / "arm26.json"
    target.write_text(json.dumps(document, indent=1) + "\n", encoding="utf-8")
    for element in elements:
        print(
            element["element"],
            len(element["powers"]) - 1,
            element["rms_mm"],
            element["max_mm"],
            element["arm_rms_mm"],
        )


if __name__ == "__main__":
    main()
