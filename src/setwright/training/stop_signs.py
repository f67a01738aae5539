"""Signs that stop training and what to do about them, in plain words with their findings.

Nothing here diagnoses or treats.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from setwright.plan.symptoms import FINDING_OF, Symptom


@dataclass(frozen=True)
class Caution:
    """One caution in our own words, with the findings it stands on."""

    words: str
    sources: tuple[str, ...]


STOP_SIGNS: tuple[Caution, ...] = (
    Caution(
        "Discomfort in chest, jaw, neck or arm, or breath shorter than the work explains: stop and "
        "call the emergency services.",
        ("flag-chest",),
    ),
    Caution(
        "A drooping face, weakness of one side, slurred speech, or sight lost at once: call the "
        "emergency services.",
        ("flag-stroke",),
    ),
    Caution(
        "A sudden, severe headache in a lift: stop and get urgent care.", ("flag-thunderclap",)
    ),
    Caution(
        "Dizziness, fainting, or a heart that races or stumbles: stop, lie down, and ask a "
        "licensed professional before the next session.",
        ("flag-faint", "flag-palpitations"),
    ),
    Caution(
        "Back pain with numbness around the saddle, trouble with bladder or bowel, or weakness in "
        "both legs: go to an emergency department now.",
        ("flag-cauda-equina",),
    ),
    Caution(
        "New numbness, tingling or weakness in an arm or leg; a pop with loss of strength; a "
        "swollen, warm calf: stop, load that part no more, and ask a licensed professional.",
        ("flag-limb-neuro", "flag-pop", "flag-calf"),
    ),
    Caution(
        "Severe pain, swelling or dark urine one to three days after training: no more training, "
        "medical care the same day.",
        ("rhabdo-signs",),
    ),
)
# Reasons not to train on a day: said when they are reported, not in every plan.
DAY_SIGNS: tuple[Caution, ...] = (
    Caution(
        "Fever, pain at night or pain after a blow: no session; ask a licensed professional "
        "before the next one.",
        ("flag-systemic",),
    ),
    Caution("Nobody trains under alcohol or drugs: no session that day.", ("flag-intoxication",)),
)


def referral(symptoms: Iterable[Symptom]) -> tuple[Caution, ...]:
    """What to do about symptoms that were reported; every symptom has its caution."""
    wanted = {FINDING_OF[one] for one in symptoms}
    return tuple(one for one in (*STOP_SIGNS, *DAY_SIGNS) if wanted & set(one.sources))
