"""Every published figure the virtual lifters are held against."""

from __future__ import annotations

from setwright.lab.check import Check, Sample
from setwright.lab.published_calls import calls_checks, repetition_checks
from setwright.lab.published_training import (
    break_checks,
    gain_checks,
    recovery_checks,
    rest_checks,
)


def published_checks(people: int = 300, seed: int = 1) -> tuple[Check, ...]:
    """Every check, on so many lifters a protocol."""
    sample = Sample(people, seed)
    return (
        *calls_checks(sample),
        *repetition_checks(sample),
        *rest_checks(sample),
        *recovery_checks(sample),
        *gain_checks(sample),
        *break_checks(sample),
    )
