"""What an import understood, a line for every line or row of the file, as a coach reads it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import groupby
from string import ascii_lowercase

from setwright.handout.wording import counted, folded
from setwright.plan.foreign.model import NO_PLAN, Piece, Reading

WIDTH = 100
SHOWN = 42
MARKS = {"attention": "?", "waiting": "…", "exercise": " ", "day": "#"}
LEGEND = "# a day   ? asked about, below   … waits for an answer   · no exercise"
# A reason said of this many lines is told once, below.
OFTEN = 3


@dataclass
class Row:
    """A row of a table, or a line of a text, in one line.

    Attributes:
        first: the piece that says what the row is.
        texts: what stands in its cells.
        asked: pieces of it that are asked about on lines of their own.
    """

    first: Piece
    texts: list[str] = field(default_factory=list)
    asked: list[Piece] = field(default_factory=list)


def preview_text(reading: Reading) -> str:
    """Every line or row with what was understood and how sure that is.

    Cells of a row are told together; a reason that many lines share is told once.
    """
    rows = list(_rows(reading.pieces))
    reasons = _often(rows)
    width = max(len(row.first.place) for row in rows)
    lines = [f"{reading.name}: what was understood, and how sure (1 is as written)", LEGEND, ""]
    for row in rows:
        lines += _told(row, width, reasons)
    if reasons:
        lines.append("")
        lines += [folded(f"[{mark}] {why}", WIDTH, subsequent_indent="    ")
                  for why, mark in reasons.items()]  # fmt: skip
    return "\n".join(lines)


def _rows(pieces: Sequence[Piece]) -> Iterable[Row]:
    day = ""
    for elsewhere, run in groupby(pieces, key=lambda one: one.meaning == NO_PLAN):
        if elsewhere:
            cells = list(run)
            more = f" and {counted(len(cells) - 1, 'cell')} more" if len(cells) > 1 else ""
            yield Row(cells[0], [f"{' '.join(cells[0].text.split())}{more}"])
            continue
        for _, group in groupby(run, key=lambda one: one.row or one.place):
            members = list(group)
            days = [one for one in members if one.kind == "day"]
            if len(days) == len(members) > 0 or len(days) > 1:
                yield from (Row(one, [one.text]) for one in members if one.meaning != day)
                day = members[-1].meaning
                continue
            if days:
                if days[0].meaning != day:
                    yield Row(days[0], [days[0].text])
                day = days[0].meaning
                members = [one for one in members if one.kind != "day"]
            yield _row(members)


def _row(members: Sequence[Piece]) -> Row:
    first = next((one for one in members if one.place == one.row), members[0])
    asked = [one for one in members if one.kind == "attention" and one is not first]
    return Row(first, [one.text for one in members], asked)


def _often(rows: Iterable[Row]) -> dict[str, str]:
    """Reasons that many lines share, each with the letter it is told by."""
    said = Counter(
        why for row in rows for piece in (row.first, *row.asked) for why in _reasons(piece)
    )
    often = [why for why, times in said.items() if times >= OFTEN]
    return dict(zip(often, ascii_lowercase, strict=False))


def _reasons(piece: Piece) -> list[str]:
    return list(dict.fromkeys(one for one in piece.why.split("; ") if one))


def _meaning(piece: Piece) -> str:
    return "headings of columns" if piece.meaning.startswith("column of ") else piece.meaning


def _told(row: Row, width: int, reasons: Mapping[str, str]) -> Iterable[str]:
    yield _line(row.first, " | ".join(row.texts), width, reasons)
    for piece in row.asked:
        yield _line(piece, piece.text, width, reasons)


def _line(piece: Piece, text: str, width: int, reasons: Mapping[str, str]) -> str:
    shown = " ".join(text.split())
    shown = shown if len(shown) <= SHOWN else shown[: SHOWN - 1] + "…"
    said = _reasons(piece)
    marks = "".join(f" [{reasons[one]}]" for one in said if one in reasons)
    rest = "; ".join(one for one in said if one not in reasons)
    mark = MARKS.get(piece.kind, "·")
    head = f"{mark} {piece.place:>{width}} {piece.confidence:4.2f} {shown:<{SHOWN}}"
    return f"{head} {_meaning(piece)}{f' ({rest})' if rest else ''}{marks}"
