"""`setwright log add`: one or more lines typed, checked, and added."""

from __future__ import annotations

import uuid
from datetime import datetime, timedelta
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from setwright.cli.common import emit_json, json_option
from setwright.cli.log.common import folder_argument, moment, opened
from setwright.documents.errors import DocumentError, Fault
from setwright.plan.symptoms import SYMPTOMS

if TYPE_CHECKING:
    from setwright.documents.units import Unit
    from setwright.plan.log import Log, Record

HELP = """Add what was done to a client's log. LINE is one entry, or - for one a line from stdin.

Nothing is written unless every line is understood.

\b
Examples:
  setwright log add anna "back squat 100 x 5 @2" --rest 180
  setwright log add anna "back squat 100 x 5,5,4 @3,2,1"
  setwright log add anna "pull-up +10 x 6" --at 18:20
  setwright log add anna "assisted pull-up -20 x 8"
  setwright log add anna "split squat 20/h x 10 left" --pain "knee 3"
  setwright log add anna "leg press 180 x 12+4p to failure"
  setwright log add anna "skip dip because no time"
  setwright log add anna "replace back squat with leg press because pain"
  setwright log add anna "miss Upper A because ill"
  setwright log add anna "body mass 82.5"
  setwright log add anna "withdraw last"
  setwright log add anna - < session.txt
"""
MAX_LINES = 2000


@click.command("add", help=HELP)
@folder_argument
@click.argument("line")
@click.option("--at", metavar="TIME", help="When; now when not said. 2026-09-07T18:05 or 18:05.")
@click.option("--rest", metavar="REST", help="Rest before the set: 120, 2:00 or 2 min.")
@click.option("--pain", metavar="'WHERE LEVEL'", help="Pain in the set, 0 to 10: 'knee 3'.")
@click.option(
    "--symptom",
    "symptoms",
    multiple=True,
    metavar="SYMPTOM",
    type=click.Choice(SYMPTOMS, case_sensitive=False),
    help=f"A symptom that stops training: {', '.join(SYMPTOMS)}.",
)
@click.option("--technique", is_flag=True, help="Technique broke down.")
@click.option("--note", default="", metavar="TEXT")
@click.option("--unit", type=click.Choice(["kg", "lb"]), help="Unit of bare figures.")
@json_option
def command(
    folder: Path,
    line: str,
    at: str | None,
    rest: str | None,
    pain: str | None,
    symptoms: tuple[str, ...],
    technique: bool,
    note: str,
    unit: Unit | None,
    as_json: bool,
) -> None:
    """Add to the log."""
    from setwright.handout.log_text import added_text, pain_text, stop_text
    from setwright.plan.client_folder import LOG
    from setwright.plan.log_line import Entering
    from setwright.plan.log_store import append_records

    intake, log = opened(folder)
    said = _said(rest, pain, symptoms, technique, note)
    known = log.standing_ids()
    now = datetime.now().replace(microsecond=0)
    when = moment(at, now)
    entering = Entering(when, unit or intake.unit, lambda: str(uuid.uuid4()), said, known)
    records = _records(line, entering)
    append_records(folder / LOG, records)
    asks = _asks(log, records, now)
    if as_json:
        emit_json({"added": records, "asks": asks, "stop": stop_text(records)})
        return
    click.echo(added_text(records, intake.unit))
    for ask in asks:
        click.echo(ask)
    if pain := pain_text(records):
        click.echo(pain)
    if stop := stop_text(records):
        click.echo(f"\n{stop}")


def _records(line: str, entering: Any) -> tuple[Record, ...]:
    from setwright.plan.log_line import read_log_line

    if line != "-":
        return read_log_line(line, entering, "log add")
    rows = [(number, text) for number, text in enumerate(_stdin(), start=1) if text.strip()]
    if not rows:
        raise DocumentError("standard input", (Fault("", "nothing", "one entry a line"),))
    records: list[Record] = []
    faults: list[Fault] = []
    for number, text in rows:
        try:
            records += read_log_line(text, entering, "standard input", number)
        except DocumentError as error:
            faults += error.faults
    if faults:
        raise DocumentError("standard input", tuple(faults))
    return tuple(records)


def _stdin() -> list[str]:
    from setwright.cli.common import read_text

    lines = read_text("-")[0].splitlines()
    if len(lines) > MAX_LINES:
        fault = Fault("", f"{len(lines):,} lines", f"at most {MAX_LINES:,}; `log import` for more")
        raise DocumentError("standard input", (fault,))
    return lines


def _said(
    rest: str | None, pain: str | None, symptoms: tuple[str, ...], technique: bool, note: str
) -> dict[str, Any]:
    """Options in the words of a typed line, so that both are read by the same code."""
    from setwright.plan.amounts import AmountError
    from setwright.plan.done_tail import read_tail

    fields: dict[str, Any] = {}
    for option, words in (("rest", rest), ("pain", pain)):
        if words is not None:
            try:
                fields |= read_tail(f"{option} {words}").fields
            except AmountError as error:
                forms = {"rest": "120, 2:00 or 2 min", "pain": "where and how much, 'knee 3'"}
                fault = Fault("", repr(words), forms[option])
                raise DocumentError(f"--{option}", (fault,)) from error
    if symptoms:
        fields["symptoms"] = symptoms
    if technique:
        fields["technique"] = True
    if note:
        fields["note"] = note
    return fields


def _asks(log: Log, records: tuple[Record, ...], now: datetime) -> tuple[str, ...]:
    """What is added and yet looks odd: never refused, the coach may be right."""
    from setwright.handout.import_text import noticed
    from setwright.plan.unit_slips import slip_words

    late = {record.at.date() for record in records if record.at > now + timedelta(days=1)}
    future = tuple(f"Is {day} right? It is in the future." for day in sorted(late))
    notes = tuple(
        f"Does this note tell of a symptom that stops training? {note} If so, take it back and "
        "enter it with --symptom."
        for note in noticed(records)
    )
    return future + slip_words(log, records) + notes
