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
