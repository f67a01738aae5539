"""A table into records of the log, and questions; the log itself is not touched here."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime, time

from pydantic import ValidationError

from setwright.documents.validation import explained
from setwright.plan.importing.columns import Columns
from setwright.plan.importing.doubles import in_log, repeated
from setwright.plan.importing.identity import content_key, derived_id, occurrences
from setwright.plan.importing.one_row import Draft
from setwright.plan.importing.question import LEAVE_OUT, Question, grouped
from setwright.plan.importing.rows import LineReader
from setwright.plan.importing.settings import Lines, Settings
from setwright.plan.importing.slips import units_asked
from setwright.plan.importing.table import Table
from setwright.plan.log import BodyMass, Log, Record, SetRecord, Skipped, log_of


@dataclass(frozen=True)
class Imported:
    """What a table comes to.

    Attributes:
        records: every record the table tells of, in the order of its lines.
        fresh: those that the log does not have.
        questions: with the lines held back.
        headings: lines that are headings.
        left_out: lines left out as answered.
        record_lines: lines that became records.
        blank: number of blank lines.
    """

    records: tuple[Record, ...]
    fresh: tuple[Record, ...]
    questions: tuple[Question, ...]
    headings: tuple[int, ...]
    left_out: tuple[int, ...]
    record_lines: tuple[int, ...]
    blank: int


def import_table(table: Table, columns: Columns, settings: Settings, log: Log) -> Imported:
    """Read a table against a log.

    Args:
        table: the file.
        columns: what each column holds.
        settings: what the coach says about it.
        log: the log the records come to.
    """
    lines = LineReader(table, columns, settings).read()
    asked = {line: one for one in lines.questions for line in one.lines}
    drafts, faulty = _buildable(lines.drafts)
    asked |= faulty
    asked_units, drafts = units_asked(_paired(drafts), log, settings.answers)
    pairs = _paired(drafts)
    asked_twice, out_twice = repeated(pairs, settings.answers)
    asked_known, out_known = in_log(pairs, log, settings.answers)
    for more in (asked_units, asked_twice, asked_known):
        for line, question in more.items():
            asked.setdefault(line, question)
    gone = {*lines.left_out, *out_twice, *out_known}
    found: list[tuple[int, Record]] = [
        (draft.line, record)
        for draft, record in pairs
        if draft.line not in asked and draft.line not in gone
    ]
    found += [(line, one) for line, one in _others(lines) if line not in asked]
    found.sort(key=lambda item: item[0])
    records = log_of(record for _, record in found).records
    return Imported(
        records,
        tuple(record for record in records if record.id not in log.ids),
        grouped(asked.values()),
        tuple(lines.headings),
        tuple(sorted(gone)),
        tuple(sorted({line for line, _ in found})),
        table.blank,
    )


def _buildable(drafts: Iterable[Draft]) -> tuple[list[Draft], dict[int, Question]]:
    """Drafts that make records; a question for each line that does not."""
    good: list[Draft] = []
    asked: dict[int, Question] = {}
    for draft in drafts:
        try:
            _record(draft, derived_id(""))
        except ValidationError as error:
            field, found, allowed = explained(error)[0]
            forms = (f"{draft.line}={LEAVE_OUT}",)
            asks = f"What is meant? Allowed for {field}: {allowed}."
            key = f"{draft.line} {field}"
            asked[draft.line] = Question(key, "cell", (draft.line,), "", found, asks, forms)
        else:
            good.append(draft)
    return [draft for draft in good if draft.line not in asked], asked


def _paired(drafts: Sequence[Draft]) -> list[tuple[Draft, SetRecord]]:
    """Drafts with their records; equal ones are told apart by their number, then by line."""
    order = sorted(
        range(len(drafts)), key=lambda at: (drafts[at].fields.get("number") or 0, drafts[at].line)
    )
    keys = [content_key(drafts[at].fields) for at in order]
    ids = {
        at: derived_id(key, count)
        for at, key, count in zip(order, keys, occurrences(keys), strict=True)
    }
    return [(draft, _record(draft, ids[at])) for at, draft in enumerate(drafts)]


def _record(draft: Draft, ident: str) -> SetRecord:
    return SetRecord.model_validate({"id": ident, **draft.fields})


def _others(lines: Lines) -> list[tuple[int, Record]]:
    """Body masses and skipped exercises, each told once a day however many lines repeat it."""
    found: list[tuple[int, Record]] = []
    first = {
        at.date(): at for _, at, _ in sorted(lines.masses, key=lambda one: one[1], reverse=True)
    }
    for line, at, kilos in lines.masses:
        ident = derived_id(f"body mass {at.date()} {kilos}")
        found.append((line, BodyMass(id=ident, at=first[at.date()], kg=kilos)))
    for line, at, exercise in lines.skipped:
        ident = derived_id(f"skipped {at.date()} {exercise}")
        day = datetime.combine(at.date(), time(0))
        found.append((line, Skipped(id=ident, at=day, exercise=exercise)))
    return found
