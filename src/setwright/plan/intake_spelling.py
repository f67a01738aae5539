"""The short forms an intake may use, spelled out as its models have them, positions kept."""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import date
from functools import partial
from typing import Any

from setwright.documents.validation import Spot
from setwright.documents.yaml_build import Path_
from setwright.documents.yaml_io import shown
from setwright.plan import amounts
from setwright.plan.intake import Screening
from setwright.plan.spelling import SHORT_FIELDS, Speller, day_of

_DAY_MINUTES = re.compile(r"([A-Za-z]+)[\s,:]+(\d{1,4})\s*(?:min|minutes)?\Z")
_KNOWN_LOAD = re.compile(
    rf"(?P<name>.+?)\s*:\s*(?P<load>{amounts.NUMBER}\s*(?:kgs?|lbs?))\s*[x×]\s*(?P<reps>\d{{1,6}})"
    rf"(?:\s*reps?)?(?:\s*(?:@|,)\s*(?P<rir>{amounts.NUMBER})\s*RIR|\s*(?:@|,)?\s*RIR\s*"
    rf"(?P<rir2>{amounts.NUMBER}))?\s*\Z",
    re.IGNORECASE,
)
CLEARED_ON = "cleared_on"
KNOWN_LOAD_FORM = "`Exercise: 80 kg x 8 @ 2 RIR`"


class IntakeSpeller(Speller):
    """Spells out an intake and gathers what cannot be read."""

    def intake(self, data: Any) -> Any:
        """An intake, spelled out."""
        if not isinstance(data, dict):
            return data
        spelled = dict(data)
        unit = spelled.get("unit", "kg")
        if isinstance(spelled.get("screening"), dict):
            spelled["screening"] = {
                key: self._answer(key, item) if key in Screening.model_fields else item
                for key, item in spelled["screening"].items()
            }
        readers: dict[str, Callable[[Path_, Any], Any]] = {
            "days": self._training_day,
            "avoid": self._avoidance,
            "known_loads": lambda path, item: self._known_load(path, item, unit),
            "earlier_this_week": self._earlier,
        }
        for field, read in readers.items():
            if isinstance(spelled.get(field), list):
                spelled[field] = [read((field, at), item) for at, item in enumerate(spelled[field])]
        return spelled

    def _answer(self, key: str, value: Any) -> Any:
        if key == CLEARED_ON:
            return self._day_of_year(("screening", key), value)
        if isinstance(value, str) and value.lower() in ("yes", "no"):
            return value.lower() == "yes"
        return value

    def _day_of_year(self, path: Path_, value: Any) -> date | None:
        try:
            return None if value is None else date.fromisoformat(value)
        except (TypeError, ValueError):
            self.fault(path, shown(value), "a day as 2026-09-01")
            return None

    def _training_day(self, path: Path_, value: Any) -> Any:
        if isinstance(value, dict):
            return {**value, "day": self.day(value["day"])} if "day" in value else value
        if not isinstance(value, str):
            return value
        match = _DAY_MINUTES.match(value)
        day = day_of(match[1]) if match else None
        if match is None or day is None:
            self.fault(path, shown(value), "`monday 60 min`")
            return None
        self.spots |= {(*path, "day"): Spot(path), (*path, "minutes"): Spot(path, match.start(2))}
        return {"day": day, "minutes": int(match[2])}

    def _avoidance(self, path: Path_, value: Any) -> Any:
        if not isinstance(value, dict) or value.get("exercise") is None:
            return value
        return {**value, "exercise": self.exercise((*path, "exercise"), value["exercise"])}

    def _known_load(self, path: Path_, value: Any, unit: str) -> Any:
        if isinstance(value, dict) and len(value) == 1:
            ((name, done),) = value.items()
            if isinstance(done, str):
                value = f"{name}: {done}"
        if isinstance(value, str):
            match = _KNOWN_LOAD.match(value)
            if match is None:
                self.fault(path, shown(value), KNOWN_LOAD_FORM)
                return None
            for field in ("exercise", "load_kg", "reps", "rir"):
                self.spots[(*path, field)] = Spot(path)
            return {
                "exercise": self.exercise(path, match["name"]),
                "load_kg": amounts.read_load(match["load"]),
                "reps": int(match["reps"]),
                "rir": amounts.number(match["rir"] or match["rir2"] or "0"),
            }
        if not isinstance(value, dict):
            return value
        spelled = {SHORT_FIELDS.get(key, key): item for key, item in value.items()}
        if "load" in value:
            self.spots[(*path, "load_kg")] = Spot((*path, "load"), own_name=True)
            if "load_kg" in value:
                self.fault((*path, "load"), "'load' beside 'load_kg'", "one of the two")
        if spelled.get("load_kg") is not None:
            kind = unit if "load" in value else "kg"
            spelled["load_kg"] = self.amount(
                (*path, "load" if "load" in value else "load_kg"),
                spelled["load_kg"],
                partial(amounts.read_load, unit=kind),
            )
        if "exercise" in spelled:
            spelled["exercise"] = self.exercise((*path, "exercise"), spelled["exercise"])
        return spelled

    def _earlier(self, path: Path_, value: Any) -> Any:
        if not isinstance(value, dict):
            return value
        spelled = {**value, "day": self.day(value.get("day"))}
        if isinstance(value.get("sets"), dict):
            sets: dict[str, Any] = {}
            for words, count in value["sets"].items():
                key = (
                    words
                    if is_muscle(words)
                    else self.exercise((*path, "sets", words), words, key=True)
                )
                self.spots[(*path, "sets", key)] = Spot((*path, "sets", words), own_name=True)
                if key in sets:
                    self.fault((*path, "sets", words), f"{words!r}, named already", "each once")
                sets[key] = count
            spelled["sets"] = sets
        return spelled


def is_muscle(words: str) -> bool:
    """Whether words name a part, a muscle or a group."""
    from setwright.anatomy import atlas

    try:
        return bool(atlas.resolve(words))
    except KeyError:
        return False
