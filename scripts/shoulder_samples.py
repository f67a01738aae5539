"""Poses of the shoulder model and its path lengths there, computed with the OpenSim wheel.

The scapula keeps its distance from the breastbone: winging is solved so that the clavicle keeps
its length, and the clavicle follows. Three scapular coordinates are left, 0 at the model's rest.
"""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import opensim
from numpy.typing import NDArray

Floats = NDArray[np.float64]

SHA256 = "892bd333a1e1e6a2b77902b54218f12727eefd2306ca82bbda81621c926271fe"
REST_DEG = {
    "scapula_abduction": -17.851143,
    "scapula_elevation": -2.893314,
    "scapula_upward_rot": 11.929263,
    "scapula_winging": 15.675286,
}
SCAPULAR = ("scapula_abduction", "scapula_elevation", "scapula_upward_rot")
CLAVICLE_END = np.array([-0.02924, 0.02024, 0.12005])  # the joint with the scapula, clavicle frame
ACROMION_END = np.array([-0.01357, 0.00011, -0.01523])  # the same point, scapula frame
GLENOHUMERAL = np.array([-0.0095499448, -0.0340013641, 0.0089968219])  # scapula frame
AXIAL_AXIS = np.array([-0.0846, 0.9947, -0.0584])


@dataclass(frozen=True)
class Posed:
    """What the model shows at one pose."""

    scapula: Floats
    centre: Floats
    winging_rad: float
    lengths: Floats


class Shoulder:
    """The model, posed by scapular coordinates and the orientation of the humerus."""

    def __init__(self, path: Path) -> None:
        found = hashlib.sha256(path.read_bytes()).hexdigest()
        if found != SHA256:
            raise SystemExit(f"{path.name}: another file than these figures are made for ({found})")
        opensim.Logger.setLevelString("Off")
        self.model = opensim.Model(str(path))
        self.state = self.model.initSystem()
        coordinates = self.model.getCoordinateSet()
        self.coordinate = {
            coordinates.get(i).getName(): coordinates.get(i) for i in range(coordinates.getSize())
        }
        muscles = self.model.getMuscles()
        self.muscles = [muscles.get(i) for i in range(muscles.getSize())]
        self.names = [muscle.getName() for muscle in self.muscles]
        self._set({f"ground_thorax_rot_{axis}": 0.0 for axis in "xyz"})
        self._set({name: np.radians(value) for name, value in REST_DEG.items()})
        self.rest = np.radians([REST_DEG[name] for name in SCAPULAR])
        self.notch = self._frame("thorax")[1]  # the model puts it at the suprasternal notch
        self.clavicle_rest, self.sternal_end = self._frame("clavicle")
        self.clavicle_length = float(np.linalg.norm(CLAVICLE_END))
        angles = ("clav_prot", "clav_elev")
        self.clavicle_angles = np.array([self.coordinate[a].getValue(self.state) for a in angles])

    def _set(self, values: dict[str, float]) -> None:
        for name, value in values.items():
            self.coordinate[name].setValue(self.state, float(value), False)
        self.model.realizePosition(self.state)

    def _frame(self, body: str) -> tuple[Floats, Floats]:
        transform = self.model.getBodySet().get(body).getTransformInGround(self.state)
        turn, place = transform.R(), transform.p()
        rows = [[turn.get(i, j) for j in range(3)] for i in range(3)]
        return np.array(rows), np.array([place.get(i) for i in range(3)])

    def _gap(self, winging: float) -> float:
        self._set({"scapula_winging": winging})
        turn, place = self._frame("scapula")
        reach = np.linalg.norm(place + turn @ ACROMION_END - self.sternal_end)
        return float(reach) - self.clavicle_length

    def _close(self) -> float:
        """Winging at which the clavicle keeps its length (secant from rest)."""
        older = np.radians(REST_DEG["scapula_winging"])
        newer = older - 0.05
        error = self._gap(older)
        for _ in range(40):
            change = self._gap(newer)
            if abs(change) < 1e-12 or newer == older:
                return newer
            slope = (change - error) / (newer - older)
            older, error = newer, change
            newer = newer - float(np.clip(change / slope, -0.3, 0.3))
        raise ArithmeticError("the clavicle cannot reach")

    def _aim_clavicle(self) -> None:
        turn, place = self._frame("scapula")
        goal = place + turn @ ACROMION_END
        angles = self.clavicle_angles.copy()

        def miss(at: Floats) -> Floats:
            self._set({"clav_prot": at[0], "clav_elev": at[1]})
            turn, place = self._frame("clavicle")
            return np.asarray(place + turn @ CLAVICLE_END - goal)

        for _ in range(20):
            error = miss(angles)
            if np.linalg.norm(error) < 1e-10:
                break
            columns = [(miss(angles + step) - error) / 1e-6 for step in 1e-6 * np.eye(2)]
            angles = angles - np.linalg.lstsq(np.stack(columns, axis=1), error, rcond=None)[0]
        miss(angles)

    def scapula(self, coordinates: Floats) -> tuple[Floats, Floats, float]:
        """Orientation of the scapula, place of the glenohumeral centre from the notch, winging."""
        values = dict(zip(SCAPULAR, self.rest + coordinates, strict=True))
        self._set(values)
        winging = self._close()
        turn, place = self._frame("scapula")
        self._aim_clavicle()
        return turn, place + turn @ GLENOHUMERAL - self.notch, winging

    def marker(self, name: str) -> Floats:
        """Place of a landmark from the notch, m."""
        place = self.model.getMarkerSet().get(name).getLocationInGround(self.state)
        return np.array([place.get(i) for i in range(3)]) - self.notch

    def humerus(self, relative: Floats) -> None:
        """Turn the humerus as ``relative`` to the scapula says; ArithmeticError where it cannot."""
        goal = relative @ AXIAL_AXIS
        tilt = np.arctan2(AXIAL_AXIS[2], AXIAL_AXIS[1])
        reach = goal[1] / np.hypot(AXIAL_AXIS[1], AXIAL_AXIS[2])
        if reach > 1:
            raise ArithmeticError("the joint's axes cannot turn the humerus so")
        elevation = tilt + np.arccos(reach)
        tipped = _about(np.array([-1.0, 0, 0]), elevation)
        start = tipped @ AXIAL_AXIS
        plane = np.arctan2(goal[0], goal[2]) - np.arctan2(start[0], start[2])
        plane = (plane + np.pi) % (2 * np.pi) - np.pi
        rest = tipped.T @ _about(np.array([0, 1.0, 0]), plane).T @ relative
        axis = AXIAL_AXIS / np.linalg.norm(AXIAL_AXIS)
        sine = np.array([rest[2, 1] - rest[1, 2], rest[0, 2] - rest[2, 0], rest[1, 0] - rest[0, 1]])
        axial = np.arctan2(sine @ axis / 2, (np.trace(rest) - 1) / 2)
        self._set({"plane_elv": plane, "shoulder_elv": elevation, "axial_rot": axial})

    def lengths(self) -> Floats:
        """Length of every muscle-tendon path, m."""
        found = [m.getGeometryPath().getLength(self.state) for m in self.muscles]
        return np.array(found)

    def pose(self, coordinates: Floats, humerus: Floats) -> Posed:
        """The model with scapular coordinates (3,), rad, and the humerus turned (3, 3) in space."""
        turn, centre, winging = self.scapula(coordinates)
        return Posed(turn, centre, winging, self.relative(turn.T @ humerus))

    def relative(self, between: Floats) -> Floats:
        """Lengths with the humerus turned as ``between`` against the scapula as it stands."""
        self.humerus(between)
        return self.lengths()


def _about(axis: Floats, angle: float) -> Floats:
    x, y, z = axis / np.linalg.norm(axis)
    cross = np.array([[0, -z, y], [z, 0, -x], [-y, x, 0]])
    turned: Floats = np.eye(3) + np.sin(angle) * cross + (1 - np.cos(angle)) * cross @ cross
    return turned


STEP_RAD = 1e-3


@dataclass(frozen=True)
class Measured:
    """The model at N poses: what a fit needs.

    Attributes:
        scapula: (N, 3) scapular coordinates, rad.
        humerus: (N, 3, 3) orientation of the humerus in space.
        bone: (N, 3, 3) orientation of the scapula.
        centre: (N, 3) glenohumeral centre from the notch, m.
        lengths: (N, M) m.
        scapular_arms: (N, M, 3) at fixed orientation of the humerus, m.
        humeral_arms: (N, M, 3) about space axes at fixed scapula, m.
        refused: poses the model could not take.
    """

    scapula: Floats
    humerus: Floats
    bone: Floats
    centre: Floats
    lengths: Floats
    scapular_arms: Floats
    humeral_arms: Floats
    refused: int


def measure(path: Path, scapula: Floats, humerus: Floats) -> Measured:
    """Lengths and arms (central differences) at poses (N, 3) and (N, 3, 3)."""
    model = Shoulder(path)
    kept: list[tuple[Floats, ...]] = []
    for at, turned in zip(scapula, humerus, strict=True):
        try:
            posed = model.pose(at, turned)
            about = [
                [posed.scapula.T @ _about(axis, s * STEP_RAD) @ turned for s in (1, -1)]
                for axis in np.eye(3)
            ]
            humeral = _difference([[model.relative(r) for r in pair] for pair in about])
            moved = [[at + s * STEP_RAD * e for s in (1, -1)] for e in np.eye(3)]
            scapular = _difference([[model.pose(a, turned).lengths for a in p] for p in moved])
        except ArithmeticError:
            continue
        kept.append((at, turned, posed.scapula, posed.centre, posed.lengths, scapular, humeral))
    columns = [np.array(column) for column in zip(*kept, strict=True)]
    return Measured(*columns, refused=len(scapula) - len(kept))


def _difference(pairs: list[list[Floats]]) -> Floats:
    return np.stack([(less - more) / (2 * STEP_RAD) for more, less in pairs], axis=-1)
