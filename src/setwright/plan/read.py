"""Documents read: a plan in YAML or as plain text, and an intake; every fault placed."""

from __future__ import annotations

import re
from collections.abc import Iterable

from setwright.documents.errors import DocumentError
from setwright.documents.validation import fault_at, validate, versioned
from setwright.plan.checking import Clash, intake_clashes, plan_clashes
from setwright.plan.intake import Intake
from setwright.plan.intake_spelling import IntakeSpeller
from setwright.plan.plain_text import read_plain_text
from setwright.plan.spelling import Speller
from setwright.plan.week import Plan

__all__ = ["is_yaml", "read_any_plan", "read_intake", "read_plain_text", "read_plan"]

_VERSION_LINE = re.compile(r"^\s*[\"']?setwright[\"']?\s*:", re.MULTILINE)


def read_plan(text: str, name: str) -> Plan:
    """Read a plan in YAML.

    Args:
        text: the document.
        name: file name for messages.

    Raises:
        DocumentError: with every fault found, each with line and column.
    """
    loaded = versioned(text, name, "plan/1")
    speller = Speller(loaded)
    data = speller.plan(loaded.data)
    _stop_at(speller, name)
    plan = validate(Plan, data, loaded, speller.spots)
    _refuse(plan_clashes(plan), speller)
    return plan


def read_intake(text: str, name: str) -> Intake:
    """Read an intake in YAML.

    Args:
        text: the document.
        name: file name for messages.

    Raises:
        DocumentError: with every fault found, each with line and column.
    """
    loaded = versioned(text, name, "intake/1")
    speller = IntakeSpeller(loaded)
    data = speller.intake(loaded.data)
    _stop_at(speller, name)
    intake = validate(Intake, data, loaded, speller.spots)
    _refuse(intake_clashes(intake), speller)
    return intake


def read_any_plan(text: str, name: str) -> Plan:
    """Read a plan, in YAML when it has a ``setwright:`` line, else as plain text.

    Raises:
        DocumentError: with every fault found, each with its line.
    """
    if is_yaml(text):
        return read_plan(text, name)
    return read_plain_text(text, name)


def is_yaml(text: str) -> bool:
    """Whether a plan is meant as YAML, or JSON, rather than as plain text."""
    return bool(_VERSION_LINE.search(text)) or text.lstrip("\ufeff \t\r\n").startswith("{")


def _stop_at(speller: Speller, name: str) -> None:
    if speller.faults:
        raise DocumentError(name, tuple(speller.faults))


def _refuse(clashes: Iterable[Clash], speller: Speller) -> None:
    faults = tuple(
        fault_at(speller.loaded, path, found, allowed, speller.spots)
        for path, found, allowed in clashes
    )
    if faults:
        raise DocumentError(speller.loaded.name, faults)
