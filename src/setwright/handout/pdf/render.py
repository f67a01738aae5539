"""The content of a handout as PDF."""

from __future__ import annotations

import json
import re
from dataclasses import asdict
from datetime import datetime
from pathlib import Path
from typing import Any, Literal
from unicodedata import category, normalize

from setwright.handout.content.model import Content, Group, Line, SessionContent
from setwright.handout.pdf.fonts import OWN, faces, fonts
from setwright.handout.pdf.letters import marked, spelled, uncommon
from setwright.handout.writable_text import writable

Paper = Literal["a4", "letter"]
PAPERS = {"a4": "a4", "letter": "us-letter"}
TEMPLATES = Path(__file__).parent
# A word longer than this many letters may be broken between any two of them.
LONG_WORD = 16
BREAK = "\u200b"
# They part or join the letters of Persian and of Indian scripts.
JOINERS = frozenset("\u200c\u200d")


def pdf(content: Content, paper: Paper, moment: datetime, week: tuple[str, ...] = ()) -> bytes:
    """Set the handout.

    Args:
        content: what it says.
        paper: size of the sheet.
        moment: date of the document, so that the same input gives the same bytes.
        week: pictures of the week as SVG; needed when the content is for the coach.

    Raises:
        ValueError: when the coach's content comes without the picture.
    """
    import typst

    if content.coach is not None and not week:
        raise ValueError("the coach's sheet needs the picture of the week")
    data = _data(content)
    shown = faces(uncommon(data))
    made = typst.compile(
        str(TEMPLATES / "handout.typ"),
        root=str(TEMPLATES),
        font_paths=fonts(of_the_machine=shown.families != OWN),
        sys_inputs={
            "data": json.dumps(printable(data, shown.lacking), ensure_ascii=False),
            "title": clean(content.title),
            "fonts": json.dumps(shown.families),
            "paper": PAPERS[paper],
            "week": json.dumps(week),
        },
        timestamp=int(moment.timestamp()),
    )
    assert isinstance(made, bytes)  # one document, no output path: bytes
    return made


def unprintable(content: Content) -> tuple[str, ...]:
    """Letters of a handout that no font here has, so that its pages show a mark instead."""
    return tuple(marked(faces(uncommon(_data(content))).lacking))


def _data(content: Content) -> dict[str, Any]:
    whose = f"for {content.person}" if content.person else ""
    return {
        "person": content.person,
        "unit": content.unit,
        "heading": " · ".join(filter(None, (content.title, whose))),
        "summary": content.summary,
        "own_cautions": content.own_cautions,
        "stop_signs": content.stop_signs,
        "ask": content.ask,
        "sessions": [_session(one) for one in content.sessions],
        "coach": asdict(content.coach) if content.coach else None,
    }


def _session(session: SessionContent) -> dict[str, Any]:
    had = "" if session.to_be_had is None else f"; {session.to_be_had} min to be had"
    return {
        "heading": session.heading,
        "minutes": f"{session.minutes} min",
        "interval": f"80 % interval {session.interval}{had}",
        "groups": [_group(group) for group in session.groups],
    }


def _group(group: Group) -> dict[str, Any]:
    return {"letter": group.letter, "lines": [_line(line) for line in group.lines]}


def _line(line: Line) -> dict[str, Any]:
    return asdict(line) | {
        "dose": line.dose,
        "rir": line.rir.replace(" > ", " → "),
        "ramp": ", ".join(line.ramp),
    }


def printable(value: Any, lacking: frozenset[str]) -> Any:
    """Text as the fonts can show it, its longest words with places to break."""
    if isinstance(value, str):
        shown = spelled(clean(value), lacking)
        return re.sub(rf"\S{{{LONG_WORD},}}", lambda word: _breakable(word[0]), shown)
    if isinstance(value, dict):
        return {key: printable(item, lacking) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [printable(item, lacking) for item in value]
    return value


def clean(text: str) -> str:
    """Text with its accents on their letters, without what controls a screen or a direction."""
    return "".join(
        letter if letter in JOINERS or category(letter) not in ("Cc", "Cf", "Cs") else " "
        for letter in normalize("NFC", writable(text))
    )


def _breakable(word: str) -> str:
    """A long word with a place to break after every letter from the eighth on.

    Words of the trade such as ``thoracolumbar`` or ``self-supported`` stay whole unless they are
    longer than any of them. A mark stays with the letter it stands on.
    """
    pieces = re.findall(r".[\u200c\u200d]*", word[8:])
    return word[:8] + "".join(
        piece if category(piece[0]).startswith("M") else BREAK + piece for piece in pieces
    )
