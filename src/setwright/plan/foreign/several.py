"""Lines with more than one exercise, and lines that head a day and go on to fill it."""

from __future__ import annotations

import re
from collections.abc import Hashable

from setwright.plan.foreign import headings
from setwright.plan.foreign.draft import JOINED, DayDraft
from setwright.plan.foreign.headings import day_heading
from setwright.plan.foreign.line import Found, read_line
from setwright.plan.foreign.model import ASSUMED
from setwright.plan.foreign.naming import named
from setwright.plan.foreign.reading_state import ReadingState
from setwright.plan.foreign.spoken import in_figures

_LISTED = re.compile(
    r"\s*[,;]\s+|\s+(?:and|und|et|y|en|then|dann|puis|luego|e|och|og)\s+|\.\s+(?=[^\W\d_])"
)
_DAY_THEN = re.compile(
    r"\s*[-*•]?\s*(?P<day>[^:–—]{2,20}?)\s*(?::|\s[-–—]|[–—])\s+(?P<rest>\S.*)\Z"
)
_MOST_LISTED = 20


class ExerciseReader(ReadingState):
    """Reads lines that prescribe exercises."""

    def exercise(
        self, place: str, text: str, found: Found, day: DayDraft, group: Hashable | None = None
    ) -> int:
        """An exercise, or several alternated in one line."""
        self.trailing = {}
        if self.warm_up:
            return self.draft.say(place, text, "note", "a warm-up; not kept in a plan", ASSUMED)
        if place not in self.answers and (parts := self.alternated(text)):
            shared = group or ("line", place)
            return self._several(parts, place, text, day, shared)
        if place not in self.answers and (parts := self.listed(text)):
            return self._several(parts, place, text, day, group)
        return self.draft.exercise(found, place, text, day, group=group)

    def _several(
        self, parts: list[Found], place: str, text: str, day: DayDraft, group: Hashable | None
    ) -> int:
        """Several exercises of one line, accounted for by one piece."""
        first, *others = [self.draft.exercise(one, place, text, day, group=group) for one in parts]
        self._one_piece(first, others)
        return first

    def alternated(self, text: str) -> list[Found]:
        """The exercises of a line that are alternated: joined by a word, or called a superset."""
        said = headings.SUPERSET_OF.match(text)
        if said is None:
            return self.joined(text)
        return self.joined(said["of"]) or self.listed(said["of"])

    def joined(self, text: str) -> list[Found]:
        """The exercises of a line that alternates several, each with its own prescription."""
        pieces = JOINED.split(in_figures(text))
        if len(pieces) < 2:
            return []
        found = [read_line(piece, self.unit, self.unit_said) for piece in pieces]
        whole = all(one.name and one.prescribes for one in found)
        return found if whole else []

    def listed(self, text: str) -> list[Found]:
        """The exercises of a line that tells several one after the other."""
        runs: list[list[str]] = []
        pieces = _LISTED.split(in_figures(text))
        if not 1 < len(pieces) <= _MOST_LISTED:
            return []
        for piece in pieces:
            said = read_line(piece, self.unit, self.unit_said)
            begins = {"sets", "reps"} <= set(said.fields) and named(said.name).ident is not None
            if begins:
                runs.append([piece])
            elif runs:
                runs[-1].append(piece)
            else:
                return []
        if len(runs) < 2:
            return []
        return [read_line(", ".join(run), self.unit, self.unit_said) for run in runs]

    def day_before(self, place: str, text: str) -> str:
        """Begin the day that a line heads and goes on to fill; what it goes on with, or ''."""
        head = _DAY_THEN.match(text)
        if head is None or place in self.answers:
            return ""
        heading = day_heading(head["day"])
        rest = read_line(head["rest"], self.unit, self.unit_said)
        if heading is None or heading.by_split or heading.week is not None or not rest.prescribes:
            return ""
        if not self.listed(head["rest"]) and named(rest.name).ident is None:
            return ""
        self.warm_up = False
        self.here = DayDraft(heading, None)
        self.draft.days.append(self.here)
        return head["rest"]

    def _one_piece(self, first: int, others: list[int]) -> None:
        """Make the pieces of one line one; the worst of them says how it stands."""
        pieces = [self.draft.pieces[at] for at in (first, *others)]
        worst = min(pieces, key=lambda one: one.confidence)
        self.draft.change(
            first,
            kind=worst.kind,
            meaning="; ".join(one.meaning for one in pieces),
            confidence=worst.confidence,
            why="; ".join(one.why for one in pieces if one.why),
            candidates=tuple(word for one in pieces for word in one.candidates),
        )
        for day in self.draft.days:
            for entry in day.entries:
                if set(entry.pieces) & set(others):
                    entry.pieces = (first,)
        for at in sorted(others, reverse=True):
            del self.draft.pieces[at]
