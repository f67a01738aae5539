"""The small columns of a table: side, kind of set, failure, rest, pain."""

from __future__ import annotations

import re
from typing import Any

from setwright.plan.amounts import AmountError, number, read_rest
from setwright.plan.done_tail import read_tail
from setwright.plan.symptoms import SYMPTOMS, Symptom

NOTHING = ("", "-", "–", "—", "n/a", "na", "none", "null", "nan", "#n/a")
YES = ("yes", "y", "true", "1", "x", "✓", "ja", "j", "si", "oui", "failure", "broke down", "bad")
NO = (*NOTHING, "no", "n", "false", "0", "nein", "non", "ok", "good", "clean", "fine", "gut")
LEFT, RIGHT = ("left", "l", "links", "izquierda"), ("right", "r", "rechts", "derecha")
BOTH = ("both", "b", "beide", "l+r", "l/r", "lr", "bilateral")
ROLES: dict[str, dict[str, Any]] = {
    word: said
    for words, said in (
        (("w", "wu", "warm", "warmup", "warm up", "warm-up", "aufwärmen", "aufwärmsatz"),
         {"role": "warm-up"}),
        (("d", "drop", "dropset", "drop set", "drop-set", "dropsatz"), {"role": "drop"}),
        (("f", "failure", "to failure", "fail"), {"to_failure": True}),
        (("n", "normal", "work", "working", "working set", "work set", "regular", "s",
          "arbeitssatz", "top set", "top", "back-off", "backoff", "back off", "straight"), {}),
    )
    for word in words
}  # fmt: skip
# A bare rest below this is meant in minutes (common practice: nobody rests 3 seconds).
MINUTES_BELOW = 11


def is_nothing(cell: str) -> bool:
    """Whether a cell says nothing."""
    return cell.casefold() in NOTHING


def read_flag(cell: str) -> bool:
    """Yes or no.

    Raises:
        AmountError: when it is neither.
    """
    word = cell.casefold()
    if word in YES:
        return True
    if word in NO:
        return False
    raise AmountError("yes or no")


def read_side(cell: str) -> str | None:
    """The side trained; None for both.

    Raises:
        AmountError: when it is no side.
    """
    word = cell.casefold()
    if word in LEFT:
        return "left"
    if word in RIGHT:
        return "right"
    if word in BOTH or word in NOTHING:
        return None
    raise AmountError("left, right or both")


def read_symptoms(cell: str) -> tuple[Symptom, ...]:
    """Symptoms that stop training.

    Raises:
        AmountError: when one is not known by this name.
    """
    if cell.casefold() in NO:
        return ()
    known = {name: name for name in SYMPTOMS}
    pieces = [" ".join(piece.casefold().split()) for piece in re.split(r"[,;/]", cell)]
    if any(piece not in known for piece in pieces):
        raise AmountError(", ".join(SYMPTOMS))
    return tuple(known[piece] for piece in pieces)  # type: ignore[index]


def read_rest_s(cell: str, unit: str | None) -> float | None:
    """Rest in seconds.

    Args:
        cell: as it stands.
        unit: of the heading: "s", "min" or None.

    Raises:
        AmountError: when it is no rest.
    """
    if is_nothing(cell):
        return None
    try:
        figure = number(cell)
    except ValueError:
        pieces = cell.split(":")
        if len(pieces) == 3 and all(piece.isdigit() for piece in pieces):
            hours, minutes, seconds = map(int, pieces)
            if hours and not seconds:
                # A spreadsheet takes a typed 2:00 for two hours.
                hours, minutes, seconds = 0, hours, minutes
            return float(hours * 3600 + minutes * 60 + seconds)
        return float(read_rest(cell)[0])
    minutes_meant = unit == "min" or (unit is None and 0 < figure < MINUTES_BELOW)
    seconds_told = figure * 60 if minutes_meant else figure
    if not 0 <= seconds_told <= 7200:
        raise AmountError("a rest of at most 2 hours")
    return seconds_told


def read_pain(cell: str, where: str) -> dict[str, Any] | None:
    """Pain: where and how much.

    Raises:
        AmountError: when there is no figure from 0 to 10.
    """
    if cell.casefold() in (*NOTHING, "no", "false", "nein"):
        return None
    text = cell
    site = "" if is_nothing(where) else where
    try:
        level = number(text.removesuffix("/10").strip())
    except ValueError:
        pain = read_tail(f"pain {text}").fields.get("pain")
        if pain is None:
            raise AmountError("where and how much, 0 to 10: knee 3") from None
        return dict(pain)
    if not 0 <= level <= 10 or level != int(level):
        raise AmountError("a whole number from 0 to 10")
    return {"where": (site or "not said")[:60], "level": int(level)} if level else None
