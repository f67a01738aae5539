"""What notes and tables read alike: a line that stands alone, and the state they share."""

from __future__ import annotations

import re
from collections.abc import Hashable, Mapping
from dataclasses import replace
from typing import Any

from setwright.documents.units import Unit
from setwright.plan.foreign import headings
from setwright.plan.foreign.draft import JOINED, DayDraft, Draft, day_words
from setwright.plan.foreign.headings import DayHeading, day_heading
from setwright.plan.foreign.line import Found, read_line
from setwright.plan.foreign.model import ASSUMED, BY_CUSTOM, DOUBTFUL
from setwright.plan.foreign.naming import likely, moves, named
from setwright.plan.foreign.settings import SETTABLE, by_kind
from setwright.plan.foreign.spoken import in_figures

# An answer that leaves a line out of the plan.
LEAVE_OUT = frozenset({"skip", "leave out", "note"})
_BETWEEN = re.compile(
    r"(?:between|sets?|rest|pause|repos|descanso|effort|intensity)\b", re.IGNORECASE
)
# The words of a title, at most; a longer line without a full stop is prose.
_TITLE_WORDS = 12
# Words of a sentence with a full stop, at least.
_SENTENCE = 4
_LISTED = re.compile(
    r"\s*[,;]\s+|\s+(?:and|und|et|y|en|then|dann|puis|luego|e|och|og)\s+|\.\s+(?=[^\W\d_])"
)
_DAY_THEN = re.compile(
    r"\s*[-*•]?\s*(?P<day>[^:–—]{2,20}?)\s*(?::|\s[-–—]|[–—])\s+(?P<rest>\S.*)\Z"
)
_MOST_LISTED = 20
_ENDS = re.compile(r"[.!?,;]\W*\Z")
_RESTING = re.compile(
    r"\b(?:rest\w*|pausen?|repos|r[ée]cup\w*|descans\w*|recuper\w*|rust\w*|pauze|breaks?|between)\b",
    re.IGNORECASE,
)


class Reader:
    """Reads lines into a draft.

    Attributes:
        draft: the growing plan.
        unit: of bare loads.
        unit_said: whether that unit was said.
        answers: by place.
        named_days: whether days are headed by weekday or number, so that ``Push`` heads none.
        week: number of the week being read, None when none is said.
        here: the session being read, None before the first.
        letter: whether the file begins with a greeting, as a letter or a message does.
        late: effort and rest said for all only below exercises that they hold for.
        for_all: what an earlier reading of the file found to be said for all.
        trailing: said below the last exercise of the file, without a word for all.
    """

    def __init__(self, unit: Unit | None, answers: Mapping[str, str]) -> None:
        self.draft = Draft()
        self.unit: Unit = unit or "kg"
        self.unit_said = unit is not None
        self.answers = answers
        self.named_days = False
        self.week: int | None = None
        self.here: DayDraft | None = None
        self.warm_up = False
        self.skipping = False
        self.letter = False
        self.late: dict[str, Any] = {}
        self.trailing: dict[str, Any] = {}
        self.for_all: dict[str, Any] = {}
        if unit is not None:
            self.draft.head["unit"] = unit

    def parsed(self, place: str, text: str) -> Found:
        """A line read, with what was answered about it."""
        found = read_line(text, self.unit, self.unit_said)
        answer = self.answers.get(place)
        if answer is None:
            return found
        said = read_line(answer, self.unit, self.unit_said)
        if said.name and said.prescribes:
            said.label = said.label or found.label
            said.assumed.append("as answered")
            return said
        found.fields |= said.fields
        if said.name and named(said.name).ident is not None:
            found.name = said.name
        elif said.name:
            found.notes.append(said.name)
        found.doubts = list(said.doubts)
        found.prescribes = found.prescribes or said.prescribes
        found.assumed.append("as answered")
        return found

    def left_out(self, place: str, text: str, row: str = "") -> bool:
        """Whether an answer leaves a piece out; it is accounted for then."""
        if self.answers.get(place, "").strip().lower() not in LEAVE_OUT:
            return False
        self.draft.say(place, text, "note", "left out, as answered", row=row)
        return True

    def begin_day(self, place: str, text: str, row: str = "") -> DayDraft | None:
        """Begin a day when a line heads one; a day without training heads none."""
        heading = day_heading(text)
        if heading is None or (heading.by_split and self.named_days):
            return None
        if heading.week is not None and not self.this_week(heading.week):
            return None
        self.warm_up = False
        self.here = self.draft.day(place, text, heading, row)
        return self.here

    def this_week(self, week: int) -> bool:
        """Whether a week is the one being read: the first that is named."""
        self.week = self.week or week
        return week == self.week

    def elsewhere(self, text: str) -> bool:
        """Whether a line stands under the heading of another week."""
        said = headings.week_number(text)
        heading = day_heading(text)
        if said is None and heading is not None:
            said = heading.week
        if said is not None:
            self.skipping = said != self.week
        return self.skipping

    def current(self) -> DayDraft:
        """The day being read; one without a heading when there is none."""
        if self.here is None:
            self.here = DayDraft(DayHeading((), "Session 1"), None)
            self.draft.days.append(self.here)
        return self.here

    def other_week(self, place: str, text: str, row: str = "") -> int:
        """Account for a piece of another week."""
        why = "another week; a plan is one week: import it apart"
        return self.draft.say(place, text, "attention", "not in the plan", DOUBTFUL, why, row=row)

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

    def about(self, place: str, text: str, found: Found, row: str = "") -> str:
        """Account for a line that prescribes nothing and heads no day; what it was taken for."""
        words = headings.bare(text)
        say = self.draft.say
        if self.prose(words):
            say(place, text, "note", "a note; not kept in a plan", BY_CUSTOM, row=row)
            return "note"
        for key, pattern in (("title", headings.TITLE), ("person", headings.PERSON)):
            match = pattern.match(words)
            if match is not None and key not in self.draft.head:
                self.draft.head[key] = match[1].strip()
                say(place, text, "title", f"{key} {match[1].strip()!r}", row=row)
                return key
        unit = headings.UNIT.search(words)
        if unit is not None:
            self.set_unit("kg" if unit[1][0] in "kK" else "lb")
            rest = words[: unit.start()].strip(" -–—,.;|(")
            if rest and len(rest.split()) <= _SENTENCE + 2 and self.is_title(rest):
                self.draft.head["title"] = rest
                say(place, text, "title", f"title {rest!r}; loads in {self.unit}", row=row)
                return "title"
            say(place, text, "setting", f"loads in {self.unit}", row=row)
            return "unit"
        week = headings.week_number(text)
        if week is not None:
            if self.this_week(week):
                say(place, text, "heading", f"week {week}", row=row)
            else:
                self.other_week(place, text, row)
            return "week"
        if self._setting(place, text, words, found, row) or self._told_between(place, text, row):
            return "setting"
        section = headings.SECTION.match(words)
        if section is not None and not found.fields and (self.draft.pieces or section["warm"]):
            self.warm_up = section["warm"] is not None or section["after"] is not None
            said = "a warm-up or a cool-down" if self.warm_up else ""
            said = f"{said}; not kept in a plan" if said else "a heading inside a day"
            say(place, text, "heading", said, BY_CUSTOM, row=row)
            return "section"
        heading = day_heading(text)
        if heading is not None and heading.week is not None:
            self.other_week(place, text, row)
            return "other week"
        if heading is not None:
            said = f"a heading inside a day: {day_words(heading)}"
            if self._names_day(heading):
                said = f"the session's name: {heading.name}"
            say(place, text, "heading", said, BY_CUSTOM, row=row)
            return "heading"
        return self._note(place, text, words, found, row)

    def prose(self, words: str) -> bool:
        """Whether a line without a prescription is a greeting, a goodbye or a sum."""
        if headings.GREETING.match(words):
            self.letter = self.letter or not self.draft.days
            return True
        return any(one.match(words) for one in (headings.CLOSING, headings.TOTAL))

    def beside(self, place: str, text: str, found: Found, row: str = "") -> bool:
        """Account for a warm-up, cardio, a sum or a remark told in one line."""
        words = headings.bare(re.sub(r"\A\s*(?:[-*•]|\d{1,2}[.)])\s+", "", text))
        section = headings.SECTION.match(words)
        said = ""
        if section is not None and (section["warm"] or section["after"]):
            more = re.search(r"\w", words[section.end() :]) is not None
            if more and named(words).ident is None:
                said = "a warm-up, a cool-down or cardio; not kept in a plan"
        elif found.prescribes and self._remark(words, found.name):
            said = "a note; not kept in a plan"
        if said:
            self.draft.say(place, text, "note", said, BY_CUSTOM, row=row)
        return bool(said)

    def _remark(self, words: str, name: str) -> bool:
        """Whether a line with sets or repetitions speaks of training and prescribes no exercise."""
        if not words or named(name).ident is not None or moves(words):
            return False
        told = (headings.TOTAL, headings.NOTE, headings.GREETING, headings.CLOSING)
        if any(one.match(words) for one in told) or headings.ASIDE.search(words):
            return True
        return headings.SPEECH.search(words) is not None and self.sentence(words, -1)

    def _names_day(self, heading: DayHeading) -> bool:
        """Give the session a name when so far it has only its weekday or number."""
        day = self.here
        if day is None or day.heading is None or day.entries or day.left_out:
            return False
        if not re.match(
            r"(?:\w+day|day \w+|session \w+|\w+tag|mittwoch)\Z", day.heading.name, re.I
        ):
            return False
        minutes = heading.minutes or day.heading.minutes
        day.heading = replace(day.heading, name=heading.name, minutes=minutes)
        if day.piece is not None:
            self.draft.change(day.piece, meaning=day_words(day.heading))
        return True

    def set_unit(self, unit: Unit) -> None:
        """Take the unit of bare loads from the file, unless the coach has said it."""
        if self.unit_said:
            return
        self.unit, self.unit_said = unit, True
        self.draft.head["unit"] = unit

    def _setting(self, place: str, text: str, words: str, found: Found, row: str) -> bool:
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

    def _told_between(self, place: str, text: str, row: str) -> bool:
        """Effort, rest or tempo said for all in one of several sentences."""
        sentences = re.split(r"(?<=[.!?;])\s+", headings.bare(text))
        return len(sentences) > 1 and any(
            self._setting(place, text, one, read_line(one, self.unit, self.unit_said), row)
            for one in sentences
        )

    def _note(self, place: str, text: str, words: str, found: Found, row: str) -> str:
        say = self.draft.say
        kept = "a note; not kept in a plan"
        if headings.NOTE.match(words):
            say(place, text, "note", kept, row=row)
            return "note"
        if found.name and (likely(found.name) or likely(words)):
            best = named(found.name) if likely(found.name) else named(words)
            say(place, text, "attention", "not in the plan", DOUBTFUL,
                "no sets and repetitions", best.candidates, row)  # fmt: skip
            return "unfinished"
        aside = headings.ASIDE.search(words) is not None
        title = self.is_title(words)
        bare_figures = not found.fields and not found.prescribes
        if not aside and (found.fields or found.doubts) and not (title and bare_figures):
            if self.sentence(words, 0 if bare_figures else 2) and not found.prescribes:
                say(place, text, "note", kept, BY_CUSTOM, row=row)
                return "note"
            why = "; ".join(one.why for one in found.doubts) or "figures without an exercise"
            say(place, text, "attention", "not in the plan", DOUBTFUL, why, row=row)
            return "unfinished"
        if title and not aside:
            self.draft.head["title"] = words
            say(place, text, "title", f"title {words!r}", BY_CUSTOM, row=row)
            return "title"
        say(place, text, "note", kept, BY_CUSTOM, row=row)
        return "note"

    def is_title(self, words: str) -> bool:
        """Whether words may be the title: the first ones, short, and no sentence."""
        begun = any(day.piece is not None or day.entries for day in self.draft.days)
        first = not begun and "title" not in self.draft.head and not self.letter
        return first and len(words.split()) <= _TITLE_WORDS and not _ENDS.search(words)

    def sentence(self, words: str, more: int = 0) -> bool:
        """Whether words with figures in them are a sentence rather than a line of a plan.

        Args:
            words: of the line.
            more: words that a sentence must have beyond the least.
        """
        count = len(re.findall(r"[^\W\d_]{2,}", words)) - more
        return count >= (_SENTENCE if _ENDS.search(words) else 2 * _SENTENCE)


def _told(fields: Mapping[str, Any]) -> str:
    return ", ".join(_setting_words(key, value) for key, value in fields.items())


def _setting_words(key: str, value: object) -> str:
    if key == "rir" and isinstance(value, tuple):
        return "RIR " + "-".join(f"{one:g}" for one in dict.fromkeys(value))
    if key == "rest_s" and isinstance(value, tuple):
        return "rest " + "-".join(str(one) for one in dict.fromkeys(value)) + " s"
    return f"tempo {value}"
