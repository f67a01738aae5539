"""How people write what they lifted: the load, the repetitions, the effort; read into figures."""

from __future__ import annotations

import re
from dataclasses import dataclass

from setwright.documents.units import Unit, to_kg
from setwright.exercises.catalogue import exercise
from setwright.plan.amounts import AmountError, number

LOAD_FORMS = "`100`, `100 kg`, `225 lb`, `20/h` (a hand), `BW`, `BW+10`, `+10` or `-20 assisted`"
REPS_FORMS = "`8`, `8+3p` (three partials), `8,8,7` (three sets)"
EFFORT_FORMS = "`@2` or `RIR 2` (repetitions in reserve), `RPE 8`"
_NUMBER = r"\d{1,5}(?:[.,]\d{1,6})?"
_LOAD = re.compile(
    rf"(?P<body>bw|bodyweight|body\s?weight)?\s*(?P<sign>[+\-−–])?\s*(?P<figure>{_NUMBER})?\s*"
    r"(?P<unit>kgs?|kilos?|lbs?|pounds?|#)?\b\.?\s*"
    r"(?P<hand>/\s*(?:h|hand|side|arm)\b|(?:per|each|a|je)\s*(?:hand|arm|side|dumbbell)\b|each\b)?"
    r"(?P<total>total\b|tot\b)?\s*"
    r"(?P<assisted>assisted|assistance|assist)?(?P<added>added)?(?:bw)?\s*\Z",
    re.IGNORECASE,
)
_REPS = re.compile(
    r"(?P<full>\d{1,4})(?:[.,]0+)?\s*(?:reps?|wdh|x)?\s*"
    r"(?:\+\s*(?P<partial>\d{1,4})\s*(?:p|part|partials?|lengthened partials?)\b\.?)?\s*\Z",
    re.IGNORECASE,
)
ASSISTED = ("assisted-pull-up", "assisted-dip", "band-assisted-pull-up")


@dataclass(frozen=True)
class SaidLoad:
    """A load as it was written.

    Attributes:
        figure: in the unit written; below zero for assistance.
        unit: the unit written, or None.
        per: whether it was said to be a hand's, or of both hands together.
        body: said as body weight, or body weight and more.
    """

    figure: float
    unit: Unit | None = None
    per: str | None = None
    body: bool = False


def read_said_load(text: str) -> SaidLoad:
    """Read a load.

    Raises:
        AmountError: when it is none.
    """
    match = _LOAD.match(text.strip())
    if match is None or not (match["figure"] or match["body"]):
        raise AmountError(LOAD_FORMS)
    figure = number(match["figure"]) if match["figure"] else 0.0
    down = match["assisted"] or (match["sign"] and match["sign"] != "+")
    if match["body"] and match["figure"] and not match["sign"]:
        raise AmountError(LOAD_FORMS)
    unit: Unit | None = None
    if match["unit"]:
        unit = "kg" if match["unit"][0] in "kK" else "lb"
    per = "hand" if match["hand"] else "total" if match["total"] else None
    return SaidLoad(-figure if down else figure, unit, per, bool(match["body"]))


def load_kg(said: SaidLoad, ident: str, unit: Unit) -> float:
    """A said load as the log keeps it: kg, a hand for dumbbell pairs, below zero for assistance.

    Args:
        said: the load as written.
        ident: catalogue id of the exercise.
        unit: unit of figures that carry none.

    Raises:
        AmountError: when the exercise cannot be loaded like this.
    """
    one = exercise(ident)
    figure = said.figure
    if one.loading == "dumbbell pair" and said.per == "total":
        figure /= 2
    if said.per == "hand" and one.loading not in ("dumbbell pair", "dumbbell", "kettlebell"):
        raise AmountError(f"a load without /h: {one.name} is not loaded by hand")
    if ident in ASSISTED:
        figure = -abs(figure)
    if figure < 0 and one.loading not in ("bodyweight", "band"):
        raise AmountError("a load of 0 or more; only bodyweight exercises can be assisted")
    if said.body and one.bodyweight_share == 0:
        raise AmountError(f"a figure: {one.name} does not lift the body")
    return round(to_kg(figure, said.unit or unit), 4) + 0.0


def read_done_reps(text: str) -> tuple[int, int]:
    """Full and partial repetitions of one set: ``8`` or ``8+3p``.

    Raises:
        AmountError: when it is neither.
    """
    match = _REPS.match(text.strip())
    if match is None:
        raise AmountError(REPS_FORMS)
    return int(match["full"]), int(match["partial"] or 0)


def rir_of_rpe(rpe: float) -> float:
    """Repetitions in reserve of an exertion rating that counts them: 10 is none left.

    Raises:
        AmountError: when there is no such rating.
    """
    if not 1 <= rpe <= 10:
        raise AmountError("an RPE from 1 to 10")
    return 10 - rpe


def read_effort(text: str, rpe: bool = False) -> float:
    """Repetitions in reserve, from ``2``, ``RIR 2``, ``@2``, ``RPE 8`` or ``@RPE8``.

    Args:
        text: as written.
        rpe: whether a bare figure is an RPE.

    Raises:
        AmountError: when it is none of these.
    """
    match = re.fullmatch(
        rf"@?\s*(?P<word>rir|rpe)?\s*(?P<figure>{_NUMBER})\s*(?P<after>rir|rpe)?",
        text.strip(),
        re.IGNORECASE,
    )
    if match is None:
        raise AmountError(EFFORT_FORMS)
    word = (match["word"] or match["after"] or ("rpe" if rpe else "rir")).lower()
    figure = number(match["figure"])
    if word == "rpe":
        return rir_of_rpe(figure)
    if figure > 10:
        raise AmountError("0 to 10 repetitions in reserve")
    return figure
