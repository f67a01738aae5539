"""What a person's answers rule out or cap: read by the designer and by the audit alike.

These are cautions for planning. They never diagnose or treat; where an answer asks for it, a
licensed professional decides.
"""

from __future__ import annotations

from dataclasses import dataclass

from setwright.exercises.model import Exercise
from setwright.plan.intake import Avoidance, Intake

# Demands below this do not count as using a joint action the person avoids.
ACTION_COUNTS_FROM = 0.25


@dataclass(frozen=True)
class Floor:
    """The least repetitions in reserve an exercise may be taken to.

    Attributes:
        rir: repetitions in reserve; 0 when nothing caps the effort.
        because: the answer that caps it, in plain words.
        evidence: ids of findings.
    """

    rir: float
    because: str
    evidence: tuple[str, ...]


@dataclass(frozen=True)
class Clearance:
    """Why a licensed professional should clear training first.

    Attributes:
        because: the answers that ask for it.
        evidence: ids of findings.
    """

    because: str
    evidence: tuple[str, ...]


NO_FLOOR = Floor(0.0, "", ())


def _floors(intake: Intake, exercise: Exercise) -> list[Floor]:
    answers = intake.screening
    floors = [NO_FLOOR]
    if exercise.pins_lifter and intake.setting == "alone":
        floors.append(
            Floor(2.0, "lifting alone under a free bar", ("free-bench-alone", "free-squat-alone"))
        )
    if answers.high_blood_pressure:
        floors.append(Floor(2.0, "high blood pressure", ("bp-cap-failure", "breath-hold")))
    if answers.hernia or answers.recent_surgery:
        floors.append(Floor(3.0, "hernia or recent surgery", ("breath-hold", "surgery-note")))
    if answers.pregnant:
        floors.append(Floor(3.0, "pregnancy", ("preg-dose",)))
    if answers.known_disease:
        floors.append(Floor(3.0, "a known disease", ("screen-inactive-disease",)))
    if not answers.active_last_3_months:
        floors.append(Floor(3.0, "not active in the last three months", ("screen-inactive-well",)))
    if answers.returning_after_break:
        floors.append(Floor(3.0, "return after a break", ("layoff-load-reset",)))
    if intake.age_band == "under 18":
        floors.append(Floor(2.0, "under 18", ("youth-dose",)))
    return floors


def rir_floor(intake: Intake | None, exercise: Exercise) -> Floor:
    """The strictest effort floor that an intake sets for an exercise."""
    if intake is None:
        return NO_FLOOR
    return max(_floors(intake, exercise), key=lambda floor: floor.rir)


def avoidance(intake: Intake | None, exercise: Exercise) -> Avoidance | None:
    """The avoidance that rules the exercise out, or None."""
    if intake is None:
        return None
    actions = {one for one, asked in exercise.actions.items() if asked >= ACTION_COUNTS_FROM}
    for item in intake.avoid:
        if (
            item.exercise == exercise.id
            or item.pattern == exercise.pattern
            or (item.action is not None and item.action in actions)
        ):
            return item
    return None


def clearance(intake: Intake) -> Clearance | None:
    """Whether a professional's clearance should come before the first session."""
    answers = intake.screening
    if answers.clearance:
        return None
    if answers.symptoms:
        return Clearance("symptoms", ("screen-inactive-symptoms", "screen-active-symptoms"))
    if answers.known_disease:
        return Clearance("a known disease", ("screen-inactive-disease", "screen-active-disease"))
    if answers.pregnant:
        return Clearance("pregnancy", ("preg-clearance",))
    if answers.recent_surgery:
        return Clearance("recent surgery", ("surgery-note",))
    return None


def volume_share(intake: Intake | None) -> tuple[float, tuple[str, ...]]:
    """Share of the usual weekly sets a first week should stay under, and the evidence."""
    if intake is None:
        return 1.0, ()
    if intake.screening.returning_after_break:
        return 0.5, ("layoff-load-reset", "rhabdo-spike")
    if not intake.screening.active_last_3_months:
        return 0.6, ("rhabdo-novice-dose", "rhabdo-spike")
    return 1.0, ()
