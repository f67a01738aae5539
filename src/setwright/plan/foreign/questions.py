"""What the questions of a form ask for, told by their words."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

# Searched for in this order; the first that fits wins.
QUESTIONS: Final[Mapping[str, re.Pattern[str]]] = {
    field: re.compile(words, re.IGNORECASE)
    for field, words in {
        "aside": r"time\s?stamp|e-?mail|phone|zeitstempel|address|submitted|consent|signature|"
        r"how did you (?:hear|find)",
        "screening.symptoms": r"chest pain|dizz|faint|breathless|short(?:ness)? of breath|symptom",
        "screening.clearance": r"clear(?:ed|ance)|(?:doctor|physician|professional).*"
        r"(?:allow|agreed|ok\b|fine)",
        "screening.high_blood_pressure": r"blood pressure|hypertension|blutdruck",
        "screening.pregnant": r"pregnan|schwanger",
        "screening.osteoporosis": r"osteoporosis|osteoporose|brittle bone",
        "screening.hernia": r"hernia|leistenbruch",
        "screening.back_pain": r"back (?:pain|problem|trouble)|pain.*\bback\b|rückenschmerz",
        "screening.recent_surgery": r"surger|operation\b|operated",
        "screening.known_disease": r"disease|heart|metabolic|kidney|diabetes|medical condition|"
        r"herzkrank",
        "screening.returning_after_break": r"(?:return|coming back).*break|time off|"
        r"(?:break|pause).*(?:weeks|months)|weeks or more without",
        "screening.active_last_3_months": r"(?:active|exercis|train).*(?:last|past) (?:3|three) "
        r"months|(?:last|past) (?:3|three) months.*(?:active|exercis|train)",
        "avoid.pain": r"injur|pain|hurts?\b|schmerz|verletz",
        "avoid.preference": r"(?:exercises?|movements?).*(?:dislike|avoid|hate|not want|won'?t)|"
        r"dislike|avoid",
        "sex": r"\bsex\b|gender|geschlecht",
        "age_band": r"\bage\b|how old|\balter\b|years old|age (?:band|group)",
        "birth": r"birth|geburt|born",
        "stature_cm": r"height|stature|how tall|größe|grösse",
        "body_mass_kg": r"body\s?(?:weight|mass)|^\s*(?:current )?(?:weight|mass)\b|"
        r"how much do you weigh|körpergewicht|^\s*gewicht\b",
        "minutes": r"minutes|how long.*(?:session|workout)|"
        r"(?:session|workout).*(?:length|long|time)|time per|dauer",
        "experience": r"experience|training age|how long.*(?:train|lift)|level\b|years of|"
        r"erfahrung",
        "aims.leave_out": r"leave out|(?:muscle|part)s?.*not (?:train|to train)|skip.*muscle",
        "aims.maintain": r"maintain|keep as (?:they|it)|erhalten",
        "aims.emphasise": r"focus|priorit|emphasi|muscles?.*(?:grow|want|bigger|first)|goals?\b|"
        r"aims?\b|ziele?\b|schwerpunkt",
        "days": r"\bdays?\b|\btage?\b|wann|when can you",
        "setting": r"alone|spotter|partner|allein",
        "gym": r"gym|equipment|where.*train|kit\b|geräte|studio",
        "unit": r"\bunits?\b|kg or lb|einheit",
        "known_loads": r"best (?:lifts?|sets?)|(?:recent|current|known) "
        r"(?:loads?|lifts?|sets?|weights?)|1\s?rm|max(?:es|imums?)?\b|bestwerte",
        "name": r"\bname\b|^\s*client\b|who are you",
    }.items()
}  # fmt: skip
REQUIRED: Final = ("name", "experience", "age_band", "days")
GYMS: Final = (
    ("full gym", r"full|commercial|big gym|everything|fitness\s?studio|public gym"),
    ("home dumbbells", r"dumbbells?.*home|home.*dumbbells?|home gym|zu hause"),
    ("machines", r"machines? only|only machines?|machines"),
    ("bodyweight", r"no (?:equipment|kit)|body\s?weight|nothing|none"),
)
SEXES: Final = (
    ("female", r"f|female|w|woman|weiblich|frau"),
    ("male", r"m|male|man|männlich|mann"),
    ("unstated", r"other|none|prefer not.*|unstated|-|x|divers|no answer"),
)


def asks_for(question: str) -> str | None:
    """The field of the intake that a question asks for, or None."""
    for field, pattern in QUESTIONS.items():
        if pattern.search(question):
            return field
    return None
