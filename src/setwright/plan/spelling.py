"""The short forms a document may use, spelled out as the models have them, positions kept."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

from setwright.documents.errors import Fault
from setwright.documents.validation import Spot, fault_at
from setwright.documents.yaml_build import Path_, dotted
from setwright.documents.yaml_io import Loaded, shown
from setwright.plan import amounts
from setwright.plan.amounts import AmountError
from setwright.plan.intake import DAYS
from setwright.plan.naming import UnsureNameError, exercise_id
from setwright.plan.shorthand import LineError, read_fields, read_prescription
from setwright.plan.week import Entry

# Short names an entry's fields may go by.
SHORT_FIELDS = {"rest": "rest_s", "load": "load_kg"}
ENTRY_FIELDS = frozenset(Entry.model_fields) | frozenset(SHORT_FIELDS)


class Speller:
    """Spells out one document and gathers what cannot be read.

    Attributes:
        faults: what could not be read.
        spots: path in the spelled-out data to the place in the author's file.
    """

    def __init__(self, loaded: Loaded) -> None:
        self.loaded = loaded
        self.faults: list[Fault] = []
        self.spots: dict[Path_, Spot] = {}

    def fault(self, path: Path_, found: str, allowed: str, offset: int = 0) -> None:
        """Note a fault, so many characters into the value at a path."""
        place = self.loaded.inside(path, offset) if offset else self.loaded.place(path)
        self.faults.append(Fault(dotted(path), found, allowed, *place))

    def amount(self, path: Path_, value: Any, read: Callable[[Any], Any]) -> Any:
        """An amount, read; itself when it cannot be, with the fault noted."""
        try:
            return read(value)
        except AmountError as error:
            self.faults.append(fault_at(self.loaded, path, shown(value), str(error)))
            return None

    def exercise(self, path: Path_, value: Any, offset: int = 0, key: bool = False) -> Any:
        """The id an author's words mean; the fault lists the candidates."""
        if not isinstance(value, str):
            return value
        try:
            return exercise_id(value)
        except UnsureNameError as error:
            place = self.loaded.key_place(path) if key else self.loaded.inside(path, offset)
            self.faults.append(Fault(dotted(path), shown(value), str(error), *place))
            return value

    def day(self, value: Any) -> Any:
        """A weekday, in any case or by its first letters, as the model has it."""
        return day_of(value) or value if isinstance(value, str) else value

    def entry(self, path: Path_, value: Any, unit: str) -> Any:
        """One exercise: a line, a mapping of the exercise to a line, or a mapping of fields."""
        if isinstance(value, str):
            return self._line(path, value)
        if not isinstance(value, dict):
            return value
        strange = [key for key in value if key not in ENTRY_FIELDS]
        if len(strange) == 1 and set(value) <= {strange[0], "note"}:
            return self._named_line(path, value, strange[0])
        return self._fields(path, value, unit)

    def _line(self, path: Path_, line: str) -> Any:
        try:
            read = read_fields(line)
        except LineError as error:
            self.fault(path, error.found, error.allowed, error.offset)
            return None
        for name, offset in read.offsets.items():
            self.spots[(*path, name)] = Spot(path, offset)
        words = read.fields["exercise"]
        return {**read.fields, "exercise": self.exercise(path, words, read.offsets["exercise"])}

    def _named_line(self, path: Path_, value: dict[str, Any], name: str) -> Any:
        inner = (*path, name)
        text = value[name]
        if not isinstance(text, str):
            line, column = self.loaded.key_place(inner)
            self.faults.append(
                Fault(
                    dotted(inner), f"the unknown field {name!r}", "no such field here", line, column
                )
            )
            return None
        exercise = self.exercise(inner, name, key=True)
        try:
            read = read_prescription(text)
        except LineError as error:
            self.fault(inner, error.found, error.allowed, error.offset)
            return None
        for field, offset in read.offsets.items():
            self.spots[(*path, field)] = Spot(inner, offset)
        if "note" in value and "note" in read.fields:
            self.fault((*path, "note"), "a second note", "one note")
        rest = {"note": value["note"]} if "note" in value else {}
        return {"exercise": exercise, **read.fields, **rest}

    def _fields(self, path: Path_, value: dict[str, Any], unit: str) -> Any:
        readers: dict[str, Callable[[Any], Any]] = {
            "reps": amounts.read_reps,
            "rir": amounts.read_rir,
            "rest_s": amounts.read_rest,
            "tempo": amounts.read_tempo,
        }
        spelled: dict[str, Any] = {}
        for key, item in value.items():
            name = SHORT_FIELDS.get(key, key)
            place = (*path, key)
            if name != key:
                self.spots[(*path, name)] = Spot(place, own_name=True)
                if name in value:
                    self.fault(place, f"{key!r} beside {name!r}", f"one of {key!r} and {name!r}")
            if name == "exercise":
                item = self.exercise(place, item)
            elif name == "tempo" and isinstance(item, dict):
                item = item and {part: _decimal(number) for part, number in item.items()}
            elif name in readers:
                item = self.amount(place, item, readers[name])
            elif name == "load_kg" and item is not None:
                kind = "kg" if key == "load_kg" else unit
                item = self.amount(place, item, partial(amounts.read_load, unit=kind))
            spelled[name] = item
        return spelled

    def plan(self, data: Any) -> Any:
        """A plan, spelled out."""
        if not isinstance(data, dict) or not isinstance(data.get("sessions"), list):
            return data
        unit = data.get("unit", "kg")
        return {
            **data,
            "sessions": [
                self._session(("sessions", at), item, unit)
                for at, item in enumerate(data["sessions"])
            ],
        }

    def _session(self, path: Path_, session: Any, unit: str) -> Any:
        if not isinstance(session, dict):
            return session
        spelled = dict(session)
        if "day" in spelled:
            spelled["day"] = self.day(spelled["day"])
        if isinstance(spelled.get("exercises"), list):
            spelled["exercises"] = [
                self.entry((*path, "exercises", at), item, unit)
                for at, item in enumerate(spelled["exercises"])
            ]
        return spelled


def day_of(words: str) -> str | None:
    """The weekday that a word names, whole or by its first three letters or more, or None."""
    word = words.strip().rstrip(".").lower()
    if len(word) < 3:
        return None
    found = [day for day in DAYS if day.startswith(word)]
    return found[0] if len(found) == 1 else None


def _decimal(value: Any) -> Any:
    return float(value) if type(value) is int else value
