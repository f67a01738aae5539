"""What a set asks of the lower back: the moment it holds, and an estimate of its compression."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from setwright.mechanics.effort import Effort
from setwright.mechanics.statics import TRUNK
from setwright.mechanics.turns import Array


@dataclass(frozen=True)
class Spine:
    """The lower back along the range.

    Attributes:
        moment: (F,) size of the moment that the trunk's muscles hold, N·m; 0 when a pad holds it.
        compression: (F,) estimate of the force that presses along the spine, N.
    """

    moment: Array
    compression: Array


def spinal(effort: Effort) -> Spine:
    """Moment and compression at the lower back at the load of the set.

    The compression is an estimate: the weight above and the load, along the spine, and the pull of
    every trunk muscle as if it ran along the spine. It has no pressure inside the belly and no
    second muscle working against the first, which take away and add some.
    """
    asked = effort.asked
    outer = asked.pressed + effort.held * asked.pressed_by_load
    if "trunk" not in effort.blocks:
        return Spine(np.zeros_like(outer), np.maximum(outer, 0.0))
    work = effort.blocks["trunk"]
    crew = work.muscles
    used = work.activations * crew.force + crew.passive
    pull = used * crew.f0_n * work.factor
    held = [asked.own[name] + effort.held * asked.load[name] for name in TRUNK]
    moment = np.linalg.norm(held, axis=0)
    return Spine(moment, np.maximum(outer + pull.sum(axis=1), 0.0))
