"""How long the fibres of a fully active muscle are, and how much of its force is left there.

A fibre in series with a tendon that gives. At full activation the fibre pulls the tendon longer
and shortens by as much, which is why a joint is strongest at a more bent angle than the anatomy
alone suggests. A fibre beyond its optimal length also pulls by itself. Slow repetitions: no
force-velocity.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

import numpy as np

from setwright.mechanics.fibre_adjustments import Place, adjustments
from setwright.mechanics.path_figures import Anchor
from setwright.mechanics.paths import Floats, Paths

# A fibre shorter than half its best length is slack: sarcomeres give nothing below 0.47 (from
# memory), and with fibres of unequal length a muscle has lost all but a fiftieth of its force at
# 0.3. Beyond 1.5 passive tension and the joints keep living fibres from going.
SHORTEST: Final = 0.3
LONGEST: Final = 1.5
# Sine of the largest angle fibres take to their tendon, 84 degrees (from memory): a pennate fibre
# cannot be shorter than its muscle is thick.
STEEPEST: Final = 0.995
TENDON_STRAIN: Final = 0.049
"""Strain of the tendon at the muscle's largest force (Journal of Biomechanical Engineering 2013,
10.1115/1.4023390; value from memory)."""

# Active force-length curve as a sum of three bells, height, centre, width and its slope (Annals of
# Biomedical Engineering 2016, 10.1007/s10439-016-1591-9; read in an open program).
_BELLS: Final = (
    (0.815, 1.055, 0.162, 0.063),
    (0.433, 0.717, -0.030, 0.200),
    (0.100, 1.000, 0.353553390593, 0.0),
)
# The fibres of a muscle are not equally long: their ratios differ by about a tenth (standard
# deviation, from memory), so that a muscle's curve is wider than a fibre's.
DISPERSION: Final = 0.10
_NODES, _WEIGHTS = np.polynomial.hermite_e.hermegauss(7)
_OFFSETS: Final = DISPERSION * _NODES
_SHARES: Final = _WEIGHTS / _WEIGHTS.sum()
# The averaged curve has its largest value at a ratio of 1; it is made 1 there.
_LARGEST: Final = 0.949
# Shape of the tendon's curve in the same study: force 0.25 * (5 ** (strain / full strain) - 1).
_TENDON_BASE: Final = 0.25
_TENDON_LOG: Final = float(np.log(5.0))
# A resting fibre reaches F0 at 1.6 of its optimal length (Annals of Biomedical Engineering 2016,
# 10.1007/s10439-016-1591-9; values from memory).
_PASSIVE_SHAPE: Final = 4.0
_PASSIVE_STRAIN: Final = 0.6
_STEPS: Final = 30
_CLOSE: Final = 1e-10

Tendon = Literal["elastic", "rigid"]


@dataclass(frozen=True)
class Fibres:
    """What the fibres of M elements need, each array (M,).

    Attributes:
        l0_m: optimal fibre length.
        offset_m: length of path that is not fibre when the tendon is slack: the tendon's slack
            length, or what makes the relaxed fibre meet its measured ratio.
        tendon_m: length of tendon that can give.
        height_m: constant thickness of the pennate muscle, l0 sin(pennation).
        strain: strain of the tendon at F0.
    """

    l0_m: Floats
    offset_m: Floats
    tendon_m: Floats
    height_m: Floats
    strain: Floats

    @property
    def shortest(self) -> Floats:
        """The smallest length ratio the fibres can take (M,)."""
        least: Floats = np.maximum(SHORTEST, self.height_m / (STEEPEST * self.l0_m))
        return least


@dataclass(frozen=True)
class FibreState:
    """Fibres at N poses of M elements.

    Attributes:
        ratio: (N, M) fibre length over optimal length, ``shortest`` to 1.5.
        force: (N, M) share of F0 that activation brings to the tendon, 0 to 1.
        passive: (N, M) share of F0 that the stretched fibre gives by itself.
    """

    ratio: Floats
    force: Floats
    passive: Floats


def active_force(ratio: Floats) -> Floats:
    """Active force at full activation over F0, at a fibre length ratio (any shape)."""
    return _curve(ratio)[0]


def passive_force(ratio: Floats) -> Floats:
    """Force of a fibre at rest over F0, at a length ratio; none up to optimal length.

    Source: the passive curve of the same study as the active one.
    """
    stretch = np.maximum(ratio - 1.0, 0.0) / _PASSIVE_STRAIN
    force: Floats = np.expm1(_PASSIVE_SHAPE * stretch) / np.expm1(_PASSIVE_SHAPE)
    return force


def _passive_slope(force: Floats, ratio: Floats) -> Floats:
    rise = _PASSIVE_SHAPE / _PASSIVE_STRAIN
    return np.where(ratio > 1.0, rise * (force + 1.0 / np.expm1(_PASSIVE_SHAPE)), 0.0)


def tendon_strain(force: Floats, strain: Floats | float = TENDON_STRAIN) -> Floats:
    """Strain of a tendon at a force over F0, 0 at none and ``strain`` at F0."""
    return np.asarray(strain * np.log1p(force / _TENDON_BASE) / _TENDON_LOG)


def _curve(ratio: Floats) -> tuple[Floats, Floats]:
    """Force and its slope: the curve of one fibre, averaged over the fibres of a muscle."""
    force = np.zeros_like(ratio)
    slope = np.zeros_like(ratio)
    for offset, share in zip(_OFFSETS, _SHARES, strict=True):
        one, rise = _one_fibre(ratio + offset)
        force += share / _LARGEST * one
        slope += share / _LARGEST * rise
    return np.minimum(force, 1.0), slope


def _one_fibre(ratio: Floats) -> tuple[Floats, Floats]:
    force = np.zeros_like(ratio)
    slope = np.zeros_like(ratio)
    for height, centre, width, widening in _BELLS:
        spread = np.maximum(width + widening * ratio, 0.02)
        z = (ratio - centre) / spread
        bell = height * np.exp(-0.5 * z * z)
        force += bell
        slope -= bell * z * (1.0 - z * widening) / spread
    return force, slope


def fibres(paths: Paths) -> Fibres:
    """The fibres of the elements of a file of paths, as adjusted and anchored where measured.

    A measured ratio belongs to a relaxed muscle, so it fixes the offset and not the active length.
    An adjustment goes before the file's own anchor.

    Raises:
        ValueError: when an anchor lies outside the range of the paths.
    """
    known = [adjustments().get(e.part or "") for e in paths.elements]
    factor = np.array([a.l0_factor if a else 1.0 for a in known])
    strain = np.array([(a.strain if a else None) or TENDON_STRAIN for a in known])
    l0 = factor * [e.l0_m for e in paths.elements]
    slack = np.array([e.slack_m for e in paths.elements])
    height = l0 * np.sin([e.pennation_rad for e in paths.elements])
    offset = slack.copy()
    for place, (element, adjusted) in enumerate(zip(paths.elements, known, strict=True)):
        anchor = (adjusted.anchor if adjusted else None) or element.ratio_anchor
        if anchor is not None:
            along_m = np.sqrt((anchor.ratio * l0[place]) ** 2 - height[place] ** 2)
            offset[place] = _anchor_length(paths, place, anchor) - along_m
    return Fibres(l0, offset, slack, height, strain)


def _anchor_length(paths: Paths, place: int, anchor: Anchor | Place) -> float:
    angles: dict[str, float] = {str(name): deg for name, deg in anchor.at_deg.items()}
    pose = np.radians([[angles.get(name, 0.0) for name in paths.coordinates]])
    return float(paths.evaluate(pose)[0][0, place])


def fibre_state(lengths_m: Floats, of: Fibres, tendon: Tendon = "elastic") -> FibreState:
    """Fibre lengths and forces at full activation.

    Args:
        lengths_m: (N, M) muscle-tendon lengths.
        of: the M elements' fibres.
        tendon: ``rigid`` for a tendon that does not give.

    Returns:
        Ratios and force factors; where the equilibrium lies outside ``shortest`` to 1.5 the nearer
        end.
    """
    free = lengths_m - of.offset_m
    if tendon == "rigid":
        along = np.maximum(free, 0.0)
        ratio = np.sqrt(along**2 + of.height_m**2) / of.l0_m
        ratio = np.clip(ratio, of.shortest, LONGEST)
    else:
        ratio = _equilibrium(free, of)
    along = np.sqrt(np.maximum((ratio * of.l0_m) ** 2 - of.height_m**2, 0.0))
    cosine = along / (ratio * of.l0_m)
    return FibreState(ratio, active_force(ratio) * cosine, passive_force(ratio) * cosine)


def _equilibrium(free: Floats, of: Fibres) -> Floats:
    """Where fibre and stretched tendon fill the path, or the nearer end of the range."""
    shape = free.shape
    reach = of.tendon_m * of.strain / _TENDON_LOG
    free, l0, reach, height, shortest = (
        np.broadcast_to(a, shape).ravel() for a in (free, of.l0_m, reach, of.height_m, of.shortest)
    )
    ratio = shortest.copy()
    ratio[_surplus(np.full(free.shape, LONGEST), free, l0, reach, height)[0] <= 0] = LONGEST
    short = _surplus(shortest, free, l0, reach, height)[0] < 0
    between = np.flatnonzero(short & (ratio < LONGEST))
    if between.size:
        ratio[between] = _solve(*(a[between] for a in (free, l0, reach, height, shortest)))
    return ratio.reshape(shape)


def _solve(free: Floats, l0: Floats, reach: Floats, height: Floats, shortest: Floats) -> Floats:
    """Newton's steps held inside a bracket."""
    low = shortest
    high = np.full(free.shape, LONGEST)
    ratio = np.clip(free / l0 - 0.05, shortest, LONGEST)
    for _ in range(_STEPS):
        left, rise = _surplus(ratio, free, l0, reach, height)
        low = np.where(left < 0, ratio, low)
        high = np.where(left > 0, ratio, high)
        step = ratio - left / rise
        new = np.where((step >= low) & (step <= high), step, 0.5 * (low + high))
        moved = np.abs(new - ratio).max()
        ratio = new
        if moved < _CLOSE:
            break
    return np.asarray(ratio)


def _surplus(
    ratio: Floats, free: Floats, l0: Floats, reach: Floats, height: Floats
) -> tuple[Floats, Floats]:
    """Fibre and tendon together less the room there is, and its slope over the ratio."""
    fibre = ratio * l0
    along = np.sqrt(np.maximum(fibre**2 - height**2, 1e-12))
    cosine = along / fibre
    active, slope = _curve(ratio)
    passive = passive_force(ratio)
    active, slope = active + passive, slope + _passive_slope(passive, ratio)
    pull = active * cosine
    left = along + reach * np.log1p(pull / _TENDON_BASE) - free
    # d along / d ratio = l0 / cos; d cos / d ratio = sin^2 / (ratio cos)
    pull_slope = slope * cosine + active * (1 - cosine**2) / (ratio * cosine)
    return left, l0 / cosine + reach * pull_slope / (_TENDON_BASE + pull)
