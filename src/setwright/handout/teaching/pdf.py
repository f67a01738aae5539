"""The teaching document as PDF."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict
from datetime import datetime
from pathlib import Path
from textwrap import shorten
from typing import Any

from setwright.handout.pdf.fonts import OWN, faces, fonts
from setwright.handout.pdf.letters import marked, uncommon
from setwright.handout.pdf.render import PAPERS, Paper, clean, printable
from setwright.handout.teaching.content import (
    Block,
    Picture,
    Points,
    Ruling,
    Table,
    Teaching,
    Words,
)

TEMPLATES = Path(__file__).parent
# Letters of the title at the foot of a page.
FOOT = 90


def pdf(document: Teaching, paper: Paper, moment: datetime) -> bytes:
    """Set a teaching document.

    Args:
        document: what it says.
        paper: size of the sheet.
        moment: date of the document, so that the same input gives the same bytes.
    """
    import typst

    data = _data(document)
    shown = faces(uncommon(data))
    made = typst.compile(
        str(TEMPLATES / "teaching.typ"),
        root=str(TEMPLATES),
        font_paths=fonts(of_the_machine=shown.families != OWN),
        sys_inputs={
            "data": json.dumps(printable(data, shown.lacking), ensure_ascii=False),
            "title": clean(document.title),
            "fonts": json.dumps(shown.families),
            "paper": PAPERS[paper],
            "pictures": json.dumps(
                {
                    block.name: block.svg
                    for section in document.sections
                    for block in section.blocks
                    if isinstance(block, Picture)
                }
            ),
        },
        timestamp=int(moment.timestamp()),
    )
    assert isinstance(made, bytes)  # one document, no output path: bytes
    return made


def unprintable(document: Teaching) -> tuple[str, ...]:
    """Letters of a document that no font here has, so that its pages show a mark instead."""
    return tuple(marked(faces(uncommon(_data(document))).lacking))


def _data(document: Teaching) -> dict[str, Any]:
    numbers = {one.ident: one.number for one in document.sources}
    return {
        "title": document.title,
        "subtitle": document.subtitle,
        "foot": shorten(document.title, FOOT, placeholder=" …"),
        "depth": document.depth,
        "sections": [
            {
                "title": section.title,
                "level": section.level,
                "blocks": [_block(block, numbers) for block in section.blocks],
            }
            for section in document.sections
        ],
        "sources": [asdict(one) for one in document.sources],
    }


def _block(block: Block, numbers: Mapping[str, int]) -> dict[str, Any]:
    if isinstance(block, Words):
        return {"kind": "words", **_words(block, numbers)}
    if isinstance(block, Points):
        return {
            "kind": "points",
            "caption": block.caption,
            "items": [_words(item, numbers) for item in block.items],
        }
    if isinstance(block, Table):
        return {"kind": "table", **asdict(block)}
    if isinstance(block, Picture):
        return {"kind": "picture", "name": block.name, "alt": block.alt, "caption": block.caption}
    return {"kind": "ruling", **_ruling(block, numbers)}


def _words(words: Words, numbers: Mapping[str, int]) -> dict[str, Any]:
    return {"text": words.text, "sources": _marks(words.sources, numbers)}


def _ruling(one: Ruling, numbers: Mapping[str, int]) -> dict[str, Any]:
    return asdict(one) | {
        "shown": [_words(item, numbers) for item in one.shown],
        "sources": _marks(one.sources, numbers),
    }


def _marks(idents: tuple[str, ...], numbers: Mapping[str, int]) -> list[int]:
    return [numbers[ident] for ident in idents if ident in numbers]
