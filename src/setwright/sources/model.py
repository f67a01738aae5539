"""What a finding holds."""

from __future__ import annotations

from typing import Literal

from setwright.documents.base import Document

Read = Literal["abstract", "full text", "secondary page", "computed from open data", "from memory"]
Basis = Literal[
    "trial",
    "meta-analysis",
    "guideline",
    "consensus",
    "observational",
    "handbook",
    "standard",
    "common practice",
    "derived",
    "case report",
]


class Citation(Document):
    """Where a finding stands: never an author's name."""

    title: str
    journal: str | None = None
    year: int | None = None
    doi: str | None = None


class Value(Document):
    """One figure of a finding, with its interval where one was published."""

    name: str
    value: float | None = None
    low: float | None = None
    high: float | None = None
    unit: str = ""
    note: str = ""


class Finding(Document):
    """One published finding, handbook figure or fact of the trade."""

    id: str
    topic: str
    finding: str
    values: tuple[Value, ...] = ()
    population: str = ""
    basis: Basis
    read: Read
    citations: tuple[Citation, ...] = ()
    note: str = ""
