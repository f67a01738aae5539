"""A client's folder: intake, plans by the Monday they begin, log and decisions."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from setwright.documents.errors import DocumentError, Fault
from setwright.plan.decision import Decision
from setwright.plan.intake import Intake
from setwright.plan.log import Log
from setwright.plan.log_store import read_decisions, read_log
from setwright.plan.read import read_any_plan, read_intake
from setwright.plan.week import Plan

INTAKE = "intake.yaml"
PLANS = "plans"
LOG = "log.jsonl"
DECISIONS = "decisions.jsonl"
_DATED = re.compile(r"\d{4}-\d{2}-\d{2}")
MAX_BYTES = 2_000_000


@dataclass(frozen=True)
class ClientFolder:
    """Everything kept of one client.

    Attributes:
        path: the folder.
        intake: aims and limits.
        plans: Monday from which each plan is in force, and the plan, oldest first.
        log: what was done.
        decisions: proposals decided, oldest first.
    """

    path: Path
    intake: Intake
    plans: tuple[tuple[date, Plan], ...]
    log: Log
    decisions: tuple[Decision, ...]

    def plan_on(self, day: date) -> Plan | None:
        """The plan in force on a day; None before the first."""
        begun = [plan for start, plan in self.plans if start <= day]
        return begun[-1] if begun else None


def open_folder(path: Path) -> ClientFolder:
    """Read a client's folder.

    Raises:
        DocumentError: when the folder or its intake is not there, or a document in it is at fault.
    """
    return ClientFolder(
        path,
        read_folder_intake(path),
        read_plans(path / PLANS),
        read_log(path / LOG),
        read_decisions(path / DECISIONS),
    )


def read_folder_intake(path: Path) -> Intake:
    """Read the intake of a client's folder.

    Raises:
        DocumentError: when the folder or its intake is not there or at fault.
    """
    check_folder(path)
    return read_intake(_text(path / INTAKE), str(path / INTAKE))


def check_folder(path: Path) -> None:
    """Make sure that a path is a client's folder.

    Raises:
        DocumentError: when it is none.
    """
    if not path.is_dir():
        found = "a file" if path.exists() else "no such folder"
        raise DocumentError(str(path), (Fault("", found, f"a folder with {INTAKE} in it"),))
    if not (path / INTAKE).is_file():
        raise DocumentError(str(path), (Fault("", f"no {INTAKE}", f"a folder with {INTAKE}"),))


def read_plans(folder: Path) -> tuple[tuple[date, Plan], ...]:
    """Read a folder of plans, each named after the Monday it begins, oldest first.

    Raises:
        DocumentError: when a name or a plan is at fault.
    """
    if not folder.is_dir():
        return ()
    found = []
    for file in sorted(folder.glob("*.yaml")):
        start = _monday(file)
        found.append((start, read_any_plan(_text(file), str(file))))
    return tuple(found)


def _monday(file: Path) -> date:
    allowed = "a name such as 2026-09-07.yaml: the Monday from which the plan is in force"
    try:
        if not _DATED.fullmatch(file.stem):
            raise ValueError
        start = date.fromisoformat(file.stem)
    except ValueError:
        raise DocumentError(str(file), (Fault("", repr(file.name), allowed),)) from None
    if start.weekday() != 0:
        found = f"a {start:%A}"
        raise DocumentError(str(file), (Fault("", found, allowed),))
    return start


def _text(file: Path) -> str:
    try:
        raw = file.read_bytes()
        if len(raw) > MAX_BYTES:
            fault = Fault("", f"{len(raw):,} bytes", f"at most {MAX_BYTES:,} bytes")
            raise DocumentError(str(file), (fault,))
        return raw.decode("utf-8-sig")
    except OSError as error:
        reason = (error.strerror or type(error).__name__).lower()
        raise DocumentError(str(file), (Fault("", reason, "a readable file"),)) from error
    except UnicodeDecodeError as error:
        found = f"a byte that is no text at position {error.start}"
        raise DocumentError(str(file), (Fault("", found, "UTF-8 text"),)) from error
