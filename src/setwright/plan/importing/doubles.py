"""Lines that may tell a set a second time."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from setwright.plan.importing.identity import content_key
from setwright.plan.importing.one_row import Draft
from setwright.plan.importing.question import KEEP, LEAVE_OUT, Question
from setwright.plan.log import Log, SetRecord

REPEATED = "repeated lines"
IN_LOG = "already in the log"
Pairs = Sequence[tuple[Draft, SetRecord]]


def repeated(pairs: Pairs, answers: Mapping[str, str]) -> tuple[dict[int, Question], set[int]]:
    """Lines whose set number and content stand in the file before.

    Returns:
        Questions by line, and lines to be left out.
    """
    seen: set[tuple[int, str]] = set()
    lines = []
    for draft, record in pairs:
        if record.number is None:
            continue
        key = (record.number, content_key(draft.fields))
        if key in seen and not draft.kept:
            lines.append(draft.line)
        seen.add(key)
    asks = "The same set, with the same number, stands in the file twice. Was it done twice?"
    return _asked(REPEATED, "duplicate", lines, asks, answers)


def in_log(
    pairs: Pairs, log: Log, answers: Mapping[str, str]
) -> tuple[dict[int, Question], set[int]]:
    """Lines whose set the log has from elsewhere: typed in the gym, or from another table.

    Returns:
        Questions by line, and lines to be left out.
    """
    own = {record.id for _, record in pairs}
    others = Counter(_alike(record) for record in log.sets() if record.id not in own)
    lines = []
    for draft, record in pairs:
        if record.id in log.ids or draft.kept:
            continue
        if others[_alike(record)] > 0:
            others[_alike(record)] -= 1
            lines.append(draft.line)
    asks = "The log has these sets of that day already, from elsewhere. Were they done again?"
    return _asked(IN_LOG, "in the log", lines, asks, answers)


def _alike(record: SetRecord) -> tuple[object, ...]:
    return (
        record.at.date(),
        record.exercise,
        round(record.load_kg, 1),
        record.reps,
        record.side,
        record.role,
    )


def _asked(
    key: str, kind: str, lines: list[int], asks: str, answers: Mapping[str, str]
) -> tuple[dict[int, Question], set[int]]:
    answer = answers.get(key, "").casefold()
    if answer == KEEP:
        return {}, set()
    if answer == LEAVE_OUT:
        return {}, set(lines)
    forms = (f"{key}={KEEP}", f"{key}={LEAVE_OUT}")
    return {line: Question(key, kind, (line,), "", "", asks, forms) for line in lines}, set()
