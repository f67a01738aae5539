"""Fit the shoulder's path figures from the model file.

    python scripts/fit_shoulder_paths.py ThoracoscapularShoulderModel.osim

Needs the ``opensim`` wheel (4.6 was used) and the package on the path (``PYTHONPATH=src``). The
model file comes from the place named in ``shoulder_elements.MODEL``; another file is refused.
Writes mechanics/paths/shoulder.json and shoulder-frame.json. About five minutes.
"""

from __future__ import annotations

import argparse
import json
from multiprocessing import Pool
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from setwright.mechanics.humerus import humerus_orientation
from setwright.mechanics.rotation import left_jacobian, rotation_matrix, rotation_vector
from shoulder_elements import ANCHORS, ELEMENTS, MODEL, Wanted
from shoulder_fit import Errors, Polynomial, Sight, fit, held_out, powers, see, slopes, terms
from shoulder_region import ELEVATION, PROTRACTION, UPWARD, draw
from shoulder_samples import SHA256, Measured, Shoulder, measure

Floats = NDArray[np.float64]
FOLDER = Path(__file__).parents[1] / "src" / "setwright" / "mechanics" / "paths"
# Middle orientations: found once as those furthest from a half turn over the region.
HUMERUS_MIDDLE = np.array([-0.55, 0.50, 0.90])
JOINT_MIDDLE = np.array([0.14, -0.23, 0.29])
BOX = np.array([PROTRACTION, ELEVATION, UPWARD])
TARGET_MM, TARGET_ARM_MM = 0.3, 1.0
LEAST_M = 6e-4  # smaller terms of the six-coordinate polynomials are dropped
LADDER = {
    "scapula": [powers(d, 3) for d in (4, 5, 6)],
    "joint": [powers(d, 3) for d in (5, 6, 7, 8)],
    "thorax": [powers(4, 6), powers(6, 6, 3)],
    "clavicle": [powers(4, 6), powers(6, 6, 3)],
}
FRAME_TERMS = powers(5, 3)
LANDMARKS = {"c7": "c7", "t8": "t8", "xiphoid process": "px", "sternoclavicular joint": "sc"}


def _measure(job: tuple[Path, Floats, Floats]) -> Measured:
    return measure(*job)


def sample(path: Path, number: int, seed: int, pool: Pool) -> Measured:
    """Measured poses over the region, on two processes."""
    scapula, humerus = draw(number, seed)
    turned = humerus_orientation(*np.radians(humerus).T)
    jobs = [(path, np.radians(scapula[i::2]), turned[i::2]) for i in (0, 1)]
    one, two = pool.map(_measure, jobs)
    columns = [
        np.concatenate([getattr(one, name), getattr(two, name)])
        for name in list(Measured.__dataclass_fields__)[:-1]
    ]
    return Measured(*columns, refused=one.refused + two.refused)


class Frame:
    """Place of the joint and turn of the scapula as polynomials."""

    def __init__(self, found: Measured, rest: Floats) -> None:
        low, high = np.radians(BOX).T
        self.middle, self.half, self.rest = (low + high) / 2, (high - low) / 2, rest
        design = self.terms(found)
        self.centre = np.linalg.lstsq(design, found.centre)[0]
        self.turn = np.linalg.lstsq(design, rotation_vector(rest.T @ found.bone))[0]

    def u(self, found: Measured) -> Floats:
        """Scapular angles as the polynomials take them."""
        scaled: Floats = (found.scapula - self.middle) / self.half
        return scaled

    def terms(self, found: Measured) -> Floats:
        """Terms of the polynomials at the poses."""
        return terms(self.u(found), FRAME_TERMS)

    def bone_turn(self, found: Measured) -> Floats:
        """Turn of the scapula about space axes by its angles."""
        vector = self.terms(found) @ self.turn
        u = self.u(found)
        change = [slopes(u, FRAME_TERMS, c) @ self.turn / self.half[c] for c in range(3)]
        turned: Floats = self.rest @ left_jacobian(vector) @ np.stack(change, axis=-1)
        return turned

    def errors(self, found: Measured) -> tuple[float, float]:
        """Largest error of place, mm, and of turn, degrees."""
        design = self.terms(found)
        place = np.abs(design @ self.centre - found.centre).max()
        turn = np.abs(design @ self.turn - rotation_vector(self.rest.T @ found.bone)).max()
        return 1000 * float(place), float(np.degrees(turn))


def best(
    muscle: int, kind: str, train: Sight, test: Sight, box: Floats
) -> tuple[Polynomial, Errors]:
    """The smallest polynomial of the ladder whose errors are small enough, or the last."""
    for rows in LADDER[kind]:
        polynomial = fit(train, muscle, kind, rows, *box)
        if rows.shape[1] > 3:
            wide = np.abs(polynomial.coefficients) >= LEAST_M
            polynomial = fit(train, muscle, kind, rows[wide], *box)
        errors = held_out(polynomial, test, muscle)
        if errors.rms_mm <= TARGET_MM and errors.arm_rms_mm <= TARGET_ARM_MM:
            break
    return polynomial, errors


def boxes(train: Sight, test: Sight) -> dict[str, Floats]:
    """Low and high ends (2, c) of the coordinates of each kind, whole degrees, rad."""
    found = {"scapula": np.radians(BOX).T}
    for kind in ("thorax", "joint"):
        both = np.degrees(np.concatenate([train.values[kind], test.values[kind]]))[:, -3:]
        found[kind] = np.radians([np.floor(both.min(axis=0)), np.ceil(both.max(axis=0))])
    join = np.concatenate
    return {
        "scapula": found["scapula"],
        "joint": found["joint"],
        "thorax": join([found["scapula"], found["thorax"]], axis=1),
        "clavicle": join([found["scapula"], found["joint"]], axis=1),
    }


SCAPULAR = ["scapula protraction", "scapula elevation", "scapula upward rotation"]
HUMERAL = [f"humerus {axis}" for axis in "xyz"]
JOINT = [f"glenohumeral {axis}" for axis in "xyz"]
NAMES = {
    "scapula": SCAPULAR,
    "joint": JOINT,
    "thorax": SCAPULAR + HUMERAL,
    "clavicle": SCAPULAR + JOINT,
}


def anchor(wanted: Wanted, model: Shoulder) -> dict[str, object] | None:
    """The anchor in the coordinates of the element."""
    if wanted.anchor is None:
        return None
    pose = ANCHORS[wanted.anchor]
    humerus = humerus_orientation(*np.radians(pose.humerus))
    bone = model.scapula(np.radians(pose.scapula))[0]
    if wanted.kind == "thorax":
        turned = rotation_vector(rotation_matrix(HUMERUS_MIDDLE).T @ humerus)
    else:
        turned = rotation_vector(rotation_matrix(JOINT_MIDDLE).T @ bone.T @ humerus)
    values = [*pose.scapula, *np.degrees(turned).round(3).tolist()]
    at = dict(zip(NAMES[wanted.kind], values, strict=True))
    return {"ratio": 1.0, "at_deg": at, "source": pose.source}


def _followed(polynomial: Polynomial, share: float) -> list[float]:
    """Coefficients of a path that follows this one's changes by a share."""
    changes = polynomial.rows.sum(axis=1) > 0
    return list(np.where(changes, share, 1.0) * polynomial.coefficients)


def entry(name: str, model: Shoulder, polynomial: Polynomial, errors: Errors) -> dict[str, object]:
    """One element as the file holds it."""
    wanted = ELEMENTS[name]
    own = model.muscles[model.names.index(name)]
    muscle = model.muscles[model.names.index(wanted.path_of or name)]
    notes = [wanted.note] if wanted.note else []
    if wanted.l0_m:
        notes.append(f"fibre length measured; the model has {muscle.getOptimalFiberLength():.3f} m")
    if polynomial.left_out > 0.001:
        notes.append(
            f"path jumps at {100 * polynomial.left_out:.1f} % of the poses, left out of the fit"
        )
    return {
        "element": name,
        "part": wanted.part,
        "f0_N": round(own.getMaxIsometricForce(), 1),
        "l0_m": wanted.l0_m or round(muscle.getOptimalFiberLength(), 4),
        "slack_m": round(muscle.getTendonSlackLength(), 4),
        "pennation_rad": round(muscle.getPennationAngleAtOptimalFiberLength(), 4),
        "coordinates": NAMES[polynomial.kind],
        "powers": polynomial.rows.tolist(),
        "coefficients_m": [round(c, 7) for c in _followed(polynomial, wanted.path_share)],
        "rms_mm": round(errors.rms_mm, 2),
        "max_mm": round(errors.max_mm, 2),
        "arm_rms_mm": round(errors.arm_rms_mm, 2),
        "ratio_anchor": anchor(wanted, model),
        "note": "; ".join(notes),
    }


def ranges(found: dict[str, Floats]) -> list[dict[str, object]]:
    """Every coordinate with its range, degrees."""
    names = SCAPULAR + HUMERAL + JOINT
    ends = np.concatenate([found["thorax"], found["joint"]], axis=1)
    low, high = np.degrees(ends).round(6).tolist()
    return [
        {"name": n, "low_deg": a, "high_deg": b} for n, a, b in zip(names, low, high, strict=True)
    ]


def write_frame(frame: Frame, test: Measured, model: Shoulder) -> None:
    """The file of frames."""
    place, turn = frame.errors(test)
    markers = {key: model.marker(name).round(4).tolist() for key, name in LANDMARKS.items()}
    written = {
        "setwright": "shoulder-frame/1",
        "model": MODEL | {"sha256": SHA256},
        "axes": "thorax frame of the model: x forward, y up, z to the right when standing upright",
        "origin": "suprasternal notch",
        "landmarks_m": markers,
        "low_deg": BOX[:, 0].tolist(),
        "high_deg": BOX[:, 1].tolist(),
        "powers": FRAME_TERMS.tolist(),
        "centre_m": frame.centre.round(7).tolist(),
        "turn_rad": frame.turn.round(7).tolist(),
        "scapula_rest": frame.rest.tolist(),
        "humerus_middle_rad": HUMERUS_MIDDLE.tolist(),
        "glenohumeral_middle_rad": JOINT_MIDDLE.tolist(),
        "centre_max_mm": round(place, 2),
        "turn_max_deg": round(turn, 3),
    }
    _write("shoulder-frame", written)


def _write(name: str, content: dict[str, object]) -> None:
    text = json.dumps(content, separators=(",", ":"))
    text = text.replace(',"', ',\n"').replace("},{", "},\n{")
    (FOLDER / f"{name}.json").write_text(text + "\n", encoding="utf-8")


def main() -> None:
    """Measure, fit, write and report."""
    parser = argparse.ArgumentParser(description="Fit the shoulder's path figures.")
    parser.add_argument("model", type=Path)
    parser.add_argument("--poses", type=int, default=9000, help="poses to fit on")
    asked = parser.parse_args()
    model = Shoulder(asked.model)
    with Pool(2) as pool:
        train = sample(asked.model, asked.poses, 1, pool)
        test = sample(asked.model, asked.poses // 3, 2, pool)
    frame = Frame(train, model.scapula(np.zeros(3))[0])
    middles = rotation_matrix(HUMERUS_MIDDLE), rotation_matrix(JOINT_MIDDLE)
    seen, unseen = (see(one, *middles, frame.bone_turn(one)) for one in (train, test))
    box = boxes(seen, unseen)
    print(f"poses refused by the model: {train.refused} + {test.refused}")
    entries = []
    for name, wanted in ELEMENTS.items():
        muscle = model.names.index(wanted.path_of or name)
        polynomial, errors = best(muscle, wanted.kind, seen, unseen, box[wanted.kind])
        entries.append(entry(name, model, polynomial, errors))
        print(f"{name:28} {len(polynomial.rows):4} terms, {errors}", flush=True)
    document = {
        "setwright": "paths/1",
        "model": MODEL | {"sha256": SHA256},
        "coordinates": ranges(box),
        "elements": entries,
    }
    _write("shoulder", document)
    write_frame(frame, test, model)


if __name__ == "__main__":
    main()
