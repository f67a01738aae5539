"""The findings every figure stands on, by id."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import Literal

from pydantic import Field

from setwright.documents.base import Document
from setwright.documents.knowledge import load_folder
from setwright.sources.model import Finding

COMMON_PRACTICE = "common practice"


class FindingsFile(Document):
    """One file of findings: one topic."""

    setwright: Literal["findings/1"]
    findings: tuple[Finding, ...] = Field(min_length=1)


@cache
def findings() -> Mapping[str, Finding]:
    """Every finding by its id, in the order of the files."""
    files = load_folder("setwright.sources", "findings", FindingsFile)
    return MappingProxyType({item.id: item for file in files for item in file.findings})


def finding(ident: str) -> Finding:
    """One finding.

    Raises:
        KeyError: when there is no finding of that id.
    """
    return findings()[ident]


def topics() -> tuple[str, ...]:
    """The topics of the findings, sorted."""
    return tuple(sorted({item.topic for item in findings().values()}))
