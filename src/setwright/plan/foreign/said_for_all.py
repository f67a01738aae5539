"""Effort, rest and tempo said for all exercises, or for one kind of them."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from setwright.plan.foreign import headings
from setwright.plan.foreign.line import Found, read_line
from setwright.plan.foreign.model import BY_CUSTOM
from setwright.plan.foreign.reading_state import ReadingState
from setwright.plan.foreign.settings import SETTABLE, by_kind

_BETWEEN = re.compile(
    r"(?:between|sets?|rest|pause|repos|descanso|effort|intensity)\b", re.IGNORECASE
)
_RESTING = re.compile(
    r"\b(?:rest\w*|pausen?|repos|r[ée]cup\w*|descans\w*|recuper\w*|rust\w*|pauze|breaks?|between)\b",
    re.IGNORECASE,
)


class SettingsReader(ReadingState):
    """Reads lines that say something for all exercises."""

    def setting(self, place: str, text: str, words: str, found: Found, row: str) -> bool:
        """Effort, rest or tempo said for all, or for one kind of exercise."""
        kinds = by_kind(words, self.unit)
        for_all = headings.SETTING.search(words) is not None
        fields = {key: value for key, value in found.fields.items() if key in SETTABLE}
        if not _RESTING.search(words):
            fields.pop("rest_s", None)
        if not kinds:
            if not fields or found.doubts or len(fields) < len(found.fields):
                return False
            if not for_all and (found.name and not _BETWEEN.match(found.name)):
                return False
            kinds = {"": fields}
        day = self.here
        everywhere = day is None or (bool(day.entries) and (for_all or "" not in kinds))
        target = self.draft.defaults if everywhere or day is None else day.defaults
        for kind, said in kinds.items():
            for key, value in said.items():
                target[f"{kind} {key}".strip()] = value
                if day is not None and day.entries:
                    late = self.late if everywhere else self.trailing
                    late[f"{kind} {key}".strip()] = value
        known = {f"{kind} {key}".strip(): value
                 for kind, said in kinds.items() for key, value in said.items()}  # fmt: skip
        everywhere = everywhere or known.items() <= self.for_all.items()
        where = "all days" if everywhere else "this day"
        told = "; ".join(
            f"{kind} exercises: {_told(said)}" if kind else _told(said)
            for kind, said in kinds.items()
        )
        self.draft.say(place, text, "setting", f"for {where}: {told}", BY_CUSTOM, row=row)
        return True

    def told_between(self, place: str, text: str, row: str) -> bool:
        """Effort, rest or tempo said for all in one of several sentences."""
        sentences = re.split(r"(?<=[.!?;])\s+", headings.bare(text))
        return len(sentences) > 1 and any(
            self.setting(place, text, one, read_line(one, self.unit, self.unit_said), row)
            for one in sentences
        )


def _told(fields: Mapping[str, Any]) -> str:
    return ", ".join(_setting_words(key, value) for key, value in fields.items())


def _setting_words(key: str, value: object) -> str:
    if key == "rir" and isinstance(value, tuple):
        return "RIR " + "-".join(f"{one:g}" for one in dict.fromkeys(value))
    if key == "rest_s" and isinstance(value, tuple):
        return "rest " + "-".join(str(one) for one in dict.fromkeys(value)) + " s"
    return f"tempo {value}"
