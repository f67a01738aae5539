"""The right leg of the leg model, read with OpenSim, in the project's coordinates and signs."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import opensim

# Our coordinates in order: the model's coordinate, and the sense in which it is ours.
MODEL_COORDINATES = (
    ("hip_flexion_r", 1),
    ("hip_adduction_r", -1),
    ("hip_rotation_r", 1),
    ("knee_angle_r", 1),
    ("ankle_angle_r", 1),
    ("subtalar_angle_r", 1),
)
STEP_RAD = 1e-3


class LegModel:
    """Lengths of the leg's elements at poses given in our coordinates.

    Attributes:
        elements: names of the elements, in the order of every result.
    """

    def __init__(self, path: Path, elements: list[str]) -> None:
        opensim.Logger.setLevelString("off")
        self.elements = elements
        self._model = opensim.Model(str(path))
        coordinates = self._model.updCoordinateSet()
        for name, _ in MODEL_COORDINATES:
            coordinates.get(name).setDefaultClamped(False)
        self._state = self._model.initSystem()
        self._coordinates = [(coordinates.get(name), sign) for name, sign in MODEL_COORDINATES]
        self._knee = [name for name, _ in MODEL_COORDINATES].index("knee_angle_r")
        self._patella = coordinates.get("knee_angle_r_beta")
        self._coupler = opensim.CoordinateCouplerConstraint.safeDownCast(
            self._model.getConstraintSet().get("patellofemoral_knee_angle_r_con")
        ).getFunction()
        self._argument = opensim.Vector(1, 0.0)
        self._muscles = {name: self._model.getMuscles().get(name) for name in elements}

    def pose(self, q: np.ndarray) -> None:
        """Takes up one pose; the kneecap follows the knee as the model's coupler says."""
        for (coordinate, sign), angle in zip(self._coordinates, q, strict=True):
            coordinate.setValue(self._state, sign * float(angle), False)
        self._argument[0] = float(q[self._knee])
        self._patella.setValue(self._state, self._coupler.calcValue(self._argument), False)
        self._model.realizePosition(self._state)

    def lengths(self, q: np.ndarray, only: str | None = None) -> np.ndarray:
        """Lengths (M,) at one pose (C,), m; of one element alone with ``only``."""
        self.pose(q)
        names = [only] if only else self.elements
        return np.array(
            [self._muscles[name].getGeometryPath().getLength(self._state) for name in names]
        )

    def lengths_and_arms(
        self, q: np.ndarray, only: str | None = None
    ) -> tuple[np.ndarray, np.ndarray]:
        """Lengths (N, M) and arms (N, M, C), m, at poses (N, C), by central differences."""
        lengths = np.array([self.lengths(pose, only) for pose in q])
        arms = np.empty((*lengths.shape, q.shape[1]))
        for column, step in enumerate(STEP_RAD * np.eye(q.shape[1])):
            for row, pose in enumerate(q):
                difference = self.lengths(pose + step, only) - self.lengths(pose - step, only)
                arms[row, :, column] = -difference / (2 * STEP_RAD)
        return lengths, arms

    def own_arms(self, name: str) -> list[float]:
        """Arms of one element at the pose taken up, by the model's own call, m."""
        muscle = self._muscles[name]
        return [
            sign * muscle.computeMomentArm(self._state, coordinate)
            for coordinate, sign in self._coordinates
        ]

    def parameters(self, name: str) -> dict[str, float]:
        """Force and fibre parameters of one element."""
        muscle = self._muscles[name]
        return {
            "f0_N": round(muscle.getMaxIsometricForce(), 1),
            "l0_m": round(muscle.getOptimalFiberLength(), 5),
            "slack_m": round(muscle.getTendonSlackLength(), 5),
            "pennation_rad": round(muscle.getPennationAngleAtOptimalFiberLength(), 4),
        }
