"""`setwright log import`: a table of sets into the log; what is unclear is asked."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from setwright.cli.common import emit_json, json_option
from setwright.cli.log.answers import read_answers, read_map
from setwright.cli.log.common import day_option, folder_argument, opened
from setwright.documents.errors import DocumentError, Fault

if TYPE_CHECKING:
    from setwright.documents.units import Unit
    from setwright.plan.importing.columns import Columns
    from setwright.plan.importing.dates import DateOrder
    from setwright.plan.importing.importer import Imported
    from setwright.plan.importing.question import Question
    from setwright.plan.importing.settings import Settings
    from setwright.plan.importing.table import Table
    from setwright.plan.log import Log

HELP = """Import a table of sets (CSV or XLSX) into a client's log.

Columns are found by their headings; --map says otherwise. Lines that are unclear are not guessed:
each becomes a question, and waits in CLIENT_FOLDER/log-questions.jsonl until it is answered; all
other lines are imported. To answer, import the same file again with --answer: what is in the log
already is not added again.

\b
Examples:
  setwright log import anna diary.csv --preview
  setwright log import anna diary.xlsx --sheet 2026 --unit lb
  setwright log import anna diary.csv --map load="Weight (kg)" --map exercise=Lift
  setwright log import anna diary.csv --date-order dmy --answer "14 reps=8"
  setwright log import anna diary.csv --answer "ham curl=lying-leg-curl" --answer 20="leave out"
  setwright log import anna diary.csv --answers answers.yaml --json
"""


@click.command("import", help=HELP)
@folder_argument
@click.argument("file", type=click.Path(allow_dash=True))
@click.option("--sheet", metavar="NAME", help="Sheet of a spreadsheet; the first one with cells.")
@click.option("--map", "mapped", multiple=True, metavar="ROLE=HEADING", help="What a column holds.")
@click.option("--unit", type=click.Choice(["kg", "lb"]), help="Unit of loads that carry none.")
@day_option("--day", words="Day of all sets, for a table that tells none.")
@click.option("--date-order", type=click.Choice(["dmy", "mdy", "ymd"]), help="Of dates in figures.")
@click.option(
    "--answer", "answered", multiple=True, metavar="KEY=ANSWER", help="Answer a question."
)
@click.option(
    "--answers",
    "answer_file",
    type=click.Path(allow_dash=True),
    metavar="FILE.yaml",
    help="Answers in a file, one `KEY: ANSWER` a line.",
)
@click.option("--preview", is_flag=True, help="Show what would be imported; write nothing.")
@click.option("--yes", is_flag=True, help="Ask nothing on the terminal.")
@day_option("--today", words="Day of the import; nothing is done after it.")
@json_option
def command(
    folder: Path,
    file: str,
    sheet: str | None,
    mapped: tuple[str, ...],
    unit: Unit | None,
    day: date | None,
    date_order: DateOrder | None,
    answered: tuple[str, ...],
    answer_file: str | None,
    preview: bool,
    yes: bool,
    today: date | None,
    as_json: bool,
) -> None:
    """Import a table."""
    from setwright.plan.client_folder import LOG
    from setwright.plan.importing.columns import find_columns
    from setwright.plan.importing.held import HELD, keep_held
    from setwright.plan.importing.importer import import_table
    from setwright.plan.importing.settings import Settings
    from setwright.plan.importing.table import read_table
    from setwright.plan.log_store import append_records

    intake, log = opened(folder)
    table = read_table(_bytes(file), "standard input" if file == "-" else file, sheet)
    columns = find_columns(table, read_map(mapped), day is not None)
    answers = read_answers(answered, answer_file)
    settings = Settings(
        unit or intake.unit,
        today or date.today(),
        date_order or _order(answers),
        answers,
        _names(log),
        day,
    )
    imported = import_table(table, columns, settings, log)
    asks = not (yes or as_json or preview) and sys.stdin.isatty() and sys.stdout.isatty()
    if asks:
        imported = _dialogue(table, columns, settings, log, imported)
    questions = _open(folder, table, columns, imported)
    added = imported.fresh
    if not preview:
        added = append_records(folder / LOG, imported.fresh)
        keep_held(folder / HELD, table, columns, imported, questions)
    _report(table, columns, imported, questions, len(added), preview, as_json, intake.unit, asks)


def _open(folder: Path, table: Table, columns: Columns, imported: Imported) -> tuple[Question, ...]:
    from setwright.plan.importing.held import HELD, line_ids, read_held, still_open

    return still_open(imported, line_ids(table, columns), read_held(folder / HELD))


def _dialogue(
    table: Table, columns: Columns, settings: Settings, log: Log, imported: Imported
) -> Imported:
    """Ask on the terminal, until every question has been put once."""
    from setwright.handout.import_text import columns_text, spoken_question
    from setwright.plan.importing.importer import import_table
    from setwright.plan.importing.question import spread

    click.echo(columns_text(table, columns))
    put: set[str] = set()
    answers = dict(settings.answers)
    while open_ := [one for one in imported.questions if one.key not in put]:
        question = open_[0]
        put.add(question.key)
        click.echo(f"\n{spoken_question(question)}")
        given = click.prompt("Answer (nothing: later)", default="", show_default=False).strip()
        if not given:
            continue
        keys = {form.rpartition("=")[0] for form in question.answers}
        key = given.rpartition("=")[0] or _key_for(given, question)
        if key.casefold() not in {one.casefold() for one in keys}:
            click.echo("That does not answer it; left for later.")
            continue
        answers |= spread({key: given.rpartition("=")[2]})
        settings = replace(settings, answers=answers, order=settings.order or _order(answers))
        imported = import_table(table, columns, settings, log)
    count = len(imported.fresh)
    if count and not click.confirm(
        f"Add {count} record{'' if count == 1 else 's'} to the log?", default=True
    ):
        raise click.Abort
    return imported


def _key_for(given: str, question: Question) -> str:
    """The key a bare answer belongs to: of the answer listed, or of the first one that is open."""
    for form in question.answers:
        key, _, answer = form.rpartition("=")
        if answer.casefold() == given.casefold():
            return key
    return question.answers[0].rpartition("=")[0]


def _order(answers: dict[str, str]) -> DateOrder | None:
    from setwright.plan.importing.dates import ORDERS

    return next((one for one in ORDERS if answers.get("date order", "").casefold() == one), None)


def _names(log: Log) -> dict[str, str]:
    from setwright.exercises.catalogue import ids

    return {
        record.said.casefold(): record.exercise
        for record in log.sets()
        if record.said and record.exercise in ids()
    }


def _bytes(file: str) -> bytes:
    from setwright.documents.table_file import MAX_BYTES

    name = "standard input" if file == "-" else file
    try:
        if file == "-":
            return sys.stdin.buffer.read(MAX_BYTES + 1)
        with Path(file).open("rb") as stream:
            return stream.read(MAX_BYTES + 1)
    except OSError as error:
        reason = (error.strerror or type(error).__name__).lower()
        raise DocumentError(name, (Fault("", reason, "a readable file, or -"),)) from error


def _report(
    table: Table,
    columns: Columns,
    imported: Imported,
    questions: Sequence[Question],
    added: int,
    preview: bool,
    as_json: bool,
    unit: Unit,
    told: bool,
) -> None:
    from setwright.handout.import_text import noticed
    from setwright.handout.log_text import stop_text

    if as_json:
        data: dict[str, Any] = {
            "file": table.name,
            "sheet": table.sheet,
            "preview": preview,
            "columns": {c.heading: c.role for c in columns.used},
            "columns_not_read": columns.unused,
            "records": len(imported.records),
            "added": added,
            "already_there": len(imported.records) - len(imported.fresh),
            "lines_held": len({line for one in questions for line in one.lines}),
            "questions": questions,
            "headings": imported.headings,
            "left_out": imported.left_out,
            "blank_lines": imported.blank,
            "stop": stop_text(imported.fresh),
            "notes_to_read": noticed(imported.fresh),
        }
        emit_json(data)
        return
    from setwright.handout.import_text import import_text

    click.echo(import_text(table, columns, imported, questions, preview, unit, told))
