"""What notes and tables read alike: a line that stands alone."""

from __future__ import annotations

import re
from dataclasses import replace

from setwright.plan.foreign import headings
from setwright.plan.foreign.draft import day_words
from setwright.plan.foreign.headings import DayHeading, day_heading
from setwright.plan.foreign.line import Found
from setwright.plan.foreign.model import BY_CUSTOM, DOUBTFUL
from setwright.plan.foreign.naming import likely, moves, named
from setwright.plan.foreign.said_for_all import SettingsReader
from setwright.plan.foreign.several import ExerciseReader

# The words of a title, at most; a longer line without a full stop is prose.
_TITLE_WORDS = 12
# Words of a sentence with a full stop, at least.
_SENTENCE = 4
_ENDS = re.compile(r"[.!?,;]\W*\Z")


class Reader(ExerciseReader, SettingsReader):
    """Reads lines into a draft."""

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
        if self.setting(place, text, words, found, row) or self.told_between(place, text, row):
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
