"""What a teaching document holds, before any format is chosen."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from setwright.audit.remark import Verdict

Depth = Literal["short", "full"]
Standing = Verdict | Literal["no case here"]
Strength = Literal["good", "fair", "thin"]


@dataclass(frozen=True)
class Words:
    """A statement and the ids of the findings it stands on."""

    text: str
    sources: tuple[str, ...] = ()


@dataclass(frozen=True)
class Points:
    """Statements one below the other; a caption says what they have in common."""

    items: tuple[Words, ...]
    caption: str = ""


@dataclass(frozen=True)
class Table:
    """Rows of text.

    Attributes:
        caption: what the table shows.
        heads: one a column.
        rows: cells, as many in each as there are heads.
        figures: columns that hold figures, from 0; they are set to the right.
        wide: columns that share the room the others leave, from 0.
        stressed: cells with one of these texts are set bold.
    """

    caption: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    figures: tuple[int, ...] = ()
    wide: tuple[int, ...] = (0,)
    stressed: tuple[str, ...] = ()


@dataclass(frozen=True)
class Picture:
    """A drawing with what it shows in words.

    Attributes:
        name: letters, digits and hyphens; unique in a document.
        svg: the drawing.
        alt: what it shows, for those who do not see it.
        caption: how to read it.
    """

    name: str
    svg: str
    alt: str
    caption: str


@dataclass(frozen=True)
class Found:
    """A remark that is close or misses, in words."""

    verdict: Verdict
    words: str
    mend: str
    declared: str


@dataclass(frozen=True)
class Ruling:
    """One criterion of the audit, taught.

    Attributes:
        criterion: id in the registry.
        title: what it asks.
        standing: the worst verdict of its remarks, or ``no case here``.
        counts: how many checks hold, are close and miss.
        means: what is measured and where the limit lies.
        matters: why it matters for growth, time or safety.
        found: what is close or misses.
        held: figures that hold, with their limits.
        strength: how strong the evidence is, as judged by us.
        weighed: how many findings of what kind, and how they were read.
        thin: where the evidence is thin.
        shown: published figures with their intervals.
        sources: ids of findings.
    """

    criterion: str
    title: str
    standing: Standing
    counts: str
    means: str
    matters: str
    found: tuple[Found, ...]
    held: tuple[str, ...]
    strength: Strength
    weighed: str
    thin: str
    shown: tuple[Words, ...]
    sources: tuple[str, ...]


Block = Words | Points | Table | Picture | Ruling


@dataclass(frozen=True)
class Section:
    """A heading and what stands under it.

    Attributes:
        ident: letters, digits and hyphens; unique in a document.
        title: the heading.
        blocks: in order.
        level: 2 for a chapter, 3 for a part of one.
    """

    ident: str
    title: str
    blocks: tuple[Block, ...]
    level: Literal[2, 3] = 2


@dataclass(frozen=True)
class Source:
    """A line of the list of sources.

    Attributes:
        number: by which the text refers to it.
        ident: id of the finding.
        finding: what was found, in our words.
        kind: what kind of evidence it is and how it was read.
        cited: title, journal and year; empty for a fact of the trade.
        doi: empty when there is none.
    """

    number: int
    ident: str
    finding: str
    kind: str
    cited: str
    doi: str


@dataclass(frozen=True)
class Teaching:
    """A whole document."""

    title: str
    subtitle: str
    depth: Depth
    sections: tuple[Section, ...]
    sources: tuple[Source, ...]
    notice: str


def mentioned(sections: tuple[Section, ...]) -> tuple[str, ...]:
    """Ids of the findings that sections refer to, in the order of the first mention."""
    found: dict[str, None] = {}
    for section in sections:
        for block in section.blocks:
            for ident in _of_block(block):
                found.setdefault(ident)
    return tuple(found)


def _of_block(block: Block) -> Iterator[str]:
    if isinstance(block, Words):
        yield from block.sources
    elif isinstance(block, Points):
        for item in block.items:
            yield from item.sources
    elif isinstance(block, Ruling):
        yield from block.sources
        for item in block.shown:
            yield from item.sources
