"""An import as text: what was read, what was added, what is asked."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.documents.units import Unit
from setwright.handout.log_text import exercise_words, load_text, pain_text, stop_text
from setwright.plan.importing.columns import Columns
from setwright.plan.importing.held import Held
from setwright.plan.importing.importer import Imported
from setwright.plan.importing.question import Question
from setwright.plan.importing.table import Table
from setwright.plan.log import Record, SetRecord
from setwright.plan.symptoms import hinted

MOST_LINES = 12


def import_text(
    table: Table,
    columns: Columns,
    imported: Imported,
    questions: Sequence[Question],
    preview: bool,
    unit: Unit,
    told: bool = False,
) -> str:
    """The report of an import, or its preview.

    Args:
        table: the file.
        columns: how its columns are read.
        imported: what it came to.
        questions: that are open.
        preview: whether nothing was written.
        unit: to show loads in.
        told: whether the columns have been told already.
    """
    head = [] if told else [*_read(table, columns), ""]
    lines = [*head, *_counts(imported, questions, preview)]
    if preview and imported.fresh:
        lines += ["", *_by_exercise(imported.fresh, unit)]
    if questions:
        lines += ["", f"{_many(len(questions), 'question')}:"]
        lines += [question_text(one) for one in questions]
        lines += [
            "",
            "To answer, import the same file again with --answer; the lines wait meanwhile in "
            "log-questions.jsonl."
            if not preview
            else "Answer now with --answer, or import first and answer later.",
        ]
    lines += _alarms(imported.fresh)
    return "\n".join(lines)


def noticed(records: Sequence[Record]) -> tuple[str, ...]:
    """Notes that may tell of a symptom, with their day and exercise."""
    told = (
        f"{one.at.date()} {exercise_words(one.exercise)}: {one.note!r}"
        for one in records
        if isinstance(one, SetRecord) and hinted(one.note)
    )
    return tuple(dict.fromkeys(told))


def _alarms(records: Sequence[Record]) -> list[str]:
    """Pain and symptoms never pass silently."""
    rows = []
    if pain := pain_text(records):
        rows += ["", pain]
    if notes := noticed(records):
        rows += ["", "Read these notes: they may tell of a symptom that stops training."]
        rows += [f"  {note}" for note in notes]
    if stop := stop_text(records):
        rows += ["", stop]
    return rows


def spoken_question(question: Question) -> str:
    """One question as it is put on the terminal, with what may be typed."""
    keys = [form.rpartition("=")[0] for form in question.answers]
    words = [form.rpartition("=")[2] for form in question.answers]
    first = keys[0].rpartition(" ")[2]
    spoken = {"...": f"the right {first}", "EXERCISE": "an exercise"}
    said = [spoken.get(word, word) for word in words]
    return f"{_asked(question)}\n    Answers: {' | '.join(said)}"


def question_text(question: Question) -> str:
    """One question with its lines and the options that answer it."""
    forms = " or ".join(f'--answer "{form}"' for form in question.answers)
    return f"{_asked(question)}\n    {forms}"


def _asked(question: Question) -> str:
    place = _lines(question.lines)
    if question.column:
        place += f", column {question.column!r}"
    found = f": {question.found}" if question.found else ""
    return f"  {place}{found}\n    {question.asks}"


def waiting_text(waiting: Sequence[Held]) -> str:
    """Lines held back, file by file."""
    if not waiting:
        return "no line waits for an answer"
    rows = []
    for file in dict.fromkeys(one.file for one in waiting):
        rows.append(file)
        for one in (held for held in waiting if held.file == file):
            cells = ", ".join(f"{name} {cell}" for name, cell in one.cells.items())
            rows += [f"  line {one.line}: {cells}", f"    {one.asks}"]
    return "\n".join(rows)


def columns_text(table: Table, columns: Columns) -> str:
    """How the columns of a table are read."""
    return "\n".join(_read(table, columns))


def _read(table: Table, columns: Columns) -> list[str]:
    sheet = f", sheet {table.sheet!r}" if table.sheet else ""
    used = ", ".join(f"{c.heading!r} as {_role(c.role, c.unit)}" for c in columns.used)
    rows = [f"{table.name}{sheet}: {used}"]
    if columns.unused:
        rows.append(f"not read: {', '.join(repr(one) for one in columns.unused)}")
    if table.others:
        rows.append(f"other sheets: {', '.join(repr(one) for one in table.others)}")
    return rows


def _role(role: str, unit: str | None) -> str:
    words = role.replace("_", " ")
    return f"{words} ({unit})" if unit else words


def _counts(imported: Imported, questions: Sequence[Question], preview: bool) -> list[str]:
    there = len(imported.records) - len(imported.fresh)
    held = len({line for one in questions for line in one.lines})
    rows = [f"{_many(len(imported.fresh), 'record')} {'would be added' if preview else 'added'}"]
    if there:
        rows.append(f"{there} there already")
    if held:
        rows.append(f"{_many(held, 'line')} held back by questions")
    if imported.left_out:
        rows.append(f"{_many(len(imported.left_out), 'line')} left out as answered")
    return ["; ".join(rows)]


def _by_exercise(records: Sequence[Record], unit: Unit) -> list[str]:
    """How the preview understood the names: one line an exercise."""
    sets: dict[str, list[SetRecord]] = {}
    for record in records:
        if isinstance(record, SetRecord):
            sets.setdefault(record.exercise, []).append(record)
    rows = []
    for ident, group in sets.items():
        said = ", ".join(dict.fromkeys(repr(one.said) for one in group if one.said))
        ranked = sorted(group, key=lambda one: one.load_kg)
        low, high = load_text(ranked[0], unit), load_text(ranked[-1], unit)
        loads = low if low == high else f"{low} to {high}"
        days = [one.at.date() for one in group]
        rows.append(
            f"  {exercise_words(ident):<34} {_many(len(group), 'set'):>9}  {loads:<24} "
            f"{min(days)} to {max(days)}  {said}"
        )
    return rows


def _many(count: int, word: str) -> str:
    return f"{count} {word}{'' if count == 1 else 's'}"


def _lines(lines: Sequence[int]) -> str:
    """``line 14``, ``lines 3-9, 12``."""
    runs: list[tuple[int, int]] = []
    for line in lines:
        if runs and line == runs[-1][1] + 1:
            runs[-1] = (runs[-1][0], line)
        else:
            runs.append((line, line))
    shown = [f"{first}" if first == last else f"{first}-{last}" for first, last in runs]
    more = f" and {len(shown) - MOST_LINES} more" if len(shown) > MOST_LINES else ""
    return f"line{'s' if len(lines) > 1 else ''} {', '.join(shown[:MOST_LINES])}{more}"
