"""The person whose response is asked for."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

import numpy as np

from setwright.response.factors import CENTRAL, Coefficients, FloatArray

if TYPE_CHECKING:
    from setwright.plan.intake import AgeBand, Experience, Intake


@dataclass(frozen=True)
class Person:
    """What the response model knows of a person.

    Attributes:
        experience: training status.
        age_band: age.
        sex: kept for the trail; relative growth is taken as equal (from memory).
    """

    experience: Experience = "intermediate"
    age_band: AgeBand = "18-39"
    sex: Literal["female", "male", "unstated"] = "unstated"


def person_of(intake: Intake | None) -> Person:
    """The person of an intake; a young intermediate when there is none."""
    if intake is None:
        return Person()
    return Person(intake.experience, intake.age_band, intake.sex)


def rate(person: Person, c: Coefficients = CENTRAL) -> float | FloatArray:
    """Growth at the reference dose of :mod:`setwright.response.curves`.

    Args:
        person: whose growth.
        c: coefficients, central or drawn.

    Returns:
        Percent of size a week; a float, or shape (draws,) for drawn coefficients.
    """
    value = c["rate"]
    if person.experience != "beginner":
        value = value * c[person.experience]
    if person.age_band == "40-59":
        value = value * c["aged 40 to 59"]
    elif person.age_band == "60 and over":
        value = value * c["aged 60 and over"]
    return value if isinstance(value, float) else np.asarray(value)
