"""Symptoms that stop training, in plain words, each with the finding it stands on."""

from __future__ import annotations

from typing import Literal, get_args

Symptom = Literal[
    "chest pain",
    "breathlessness",
    "dizziness",
    "fainting",
    "racing heart",
    "drooping face or slurred speech",
    "sudden severe headache",
    "saddle numbness",
    "numb or weak limb",
    "pop with lost strength",
    "swollen calf",
    "fever",
    "night pain",
    "pain after a blow",
    "alcohol or drugs",
]
SYMPTOMS: tuple[Symptom, ...] = get_args(Symptom)

FINDING_OF: dict[Symptom, str] = {
    "chest pain": "flag-chest",
    "breathlessness": "flag-chest",
    "dizziness": "flag-faint",
    "fainting": "flag-faint",
    "racing heart": "flag-palpitations",
    "drooping face or slurred speech": "flag-stroke",
    "sudden severe headache": "flag-thunderclap",
    "saddle numbness": "flag-cauda-equina",
    "numb or weak limb": "flag-limb-neuro",
    "pop with lost strength": "flag-pop",
    "swollen calf": "flag-calf",
    "fever": "flag-systemic",
    "night pain": "flag-systemic",
    "pain after a blow": "flag-systemic",
    "alcohol or drugs": "flag-intoxication",
}


# Words in a note that may tell of a symptom: asked about, never taken for one.
HINTS: tuple[str, ...] = (
    "chest pain", "chest tight", "faint", "dizzy", "dizziness", "passed out", "blacked out",
    "palpitation", "heart rac", "slurred", "droop", "worst headache", "sudden headache", "numb",
    "tingl", "saddle", "popped", "heard a pop", "felt a pop", "swollen calf", "fever",
    "short of breath", "breathless", "can't breathe",
)  # fmt: skip


def hinted(note: str) -> str | None:
    """The word of a note that may tell of a symptom that stops training; None without one."""
    text = note.casefold()
    return next((hint for hint in HINTS if hint in text), None)
