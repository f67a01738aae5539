"""Pain, broken technique and symptoms: what they forbid of the next load."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from setwright.plan.log import SetRecord
from setwright.plan.symptoms import FINDING_OF, Symptom

# pain-scale: up to 3 carry on, 4 and 5 are acceptable only if they settle, above 5 stop. A report
# of pain never leads to a heavier load, whatever its level.
CARRY_ON = 3
ACCEPTABLE = 5
TRY_AGAIN_DAYS = 14
# Over by the next day.
PASSING: frozenset[Symptom] = frozenset(("alcohol or drugs",))
# Takes the exercise out, not the session (flag-limb-neuro).
OF_ONE_EXERCISE: frozenset[Symptom] = frozenset(("numb or weak limb",))
EVIDENCE = ("pain-scale", "pain-flare-by-training")


@dataclass(frozen=True, slots=True)
class Trouble:
    """What was reported.

    Attributes:
        pain: highest level, 0 to 10.
        technique: technique broke down.
        symptoms: that stop training.
    """

    pain: int = 0
    technique: bool = False
    symptoms: tuple[Symptom, ...] = ()

    @property
    def stop(self) -> bool:
        """Nothing more of this exercise today."""
        return bool(self.symptoms) or self.pain > ACCEPTABLE

    @property
    def ends_session(self) -> bool:
        """Nothing more at all today, and clearance before the next session."""
        return any(one not in OF_ONE_EXERCISE for one in self.symptoms)

    @property
    def lighter(self) -> bool:
        """At least a step lighter."""
        return CARRY_ON < self.pain <= ACCEPTABLE

    @property
    def not_heavier(self) -> bool:
        """No rise."""
        return self.pain > 0 or self.technique or bool(self.symptoms)

    def later(self, reported: int, day: int, cleared_on: date | None) -> Trouble:
        """What it still forbids on a later day.

        Strong pain stops an exercise for two weeks (common practice), after which it may be tried
        again, never heavier. Symptoms stop it until a health professional has cleared training on
        a day after them.

        Args:
            reported: ordinal of the day it was reported.
            day: ordinal of the day asked about.
            cleared_on: day of the last clearance.
        """
        days = day - reported
        cleared = cleared_on is not None and cleared_on.toordinal() > reported
        pain = min(self.pain, CARRY_ON) if days >= TRY_AGAIN_DAYS else self.pain
        lasting = tuple(one for one in self.symptoms if days == 0 or one not in PASSING)
        return Trouble(pain, self.technique, () if cleared else lasting)

    @property
    def evidence(self) -> tuple[str, ...]:
        """Ids of findings behind what it forbids."""
        found = tuple(dict.fromkeys(FINDING_OF[one] for one in self.symptoms))
        return (*found, *EVIDENCE) if self.pain else found


NONE = Trouble()


def trouble_of(records: Iterable[SetRecord]) -> Trouble:
    """What sets of the log report together."""
    known = tuple(records)
    return Trouble(
        max((one.pain.level for one in known if one.pain is not None), default=0),
        any(one.technique for one in known),
        tuple(dict.fromkeys(symptom for one in known for symptom in one.symptoms)),
    )


def together(one: Trouble, other: Trouble) -> Trouble:
    """Two reports as one."""
    return Trouble(
        max(one.pain, other.pain),
        one.technique or other.technique,
        tuple(dict.fromkeys((*one.symptoms, *other.symptoms))),
    )


def stop_words(trouble: Trouble) -> tuple[str, ...]:
    """Why an exercise is stopped or left out."""
    if trouble.symptoms:
        what = " and ".join(trouble.symptoms)
        return (
            f"Stop: {what} was reported.",
            "A licensed professional should clear training before this exercise is done again.",
        )
    return (
        f"Pain {trouble.pain} of 10: leave this exercise out and choose another with the coach.",
        "If it stays or grows, ask a licensed professional.",
    )
