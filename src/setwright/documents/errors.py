"""The one error a user may see: what is wrong, where, and what is allowed."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Fault:
    """One thing wrong in a document.

    Attributes:
        field: dotted path inside the document, for example ``sessions.0.exercises.2.rir``.
        found: what stands there, as the author wrote it.
        allowed: what may stand there, in plain words.
        line: line number from 1, or None when the fault has no line.
        column: column number from 1, or None.
    """

    field: str
    found: str
    allowed: str
    line: int | None = None
    column: int | None = None


class DocumentError(Exception):
    """Bad input. Carries every fault found, so that the author can mend all at once."""

    def __init__(self, name: str, faults: tuple[Fault, ...]) -> None:
        if not faults:
            raise ValueError("a DocumentError needs at least one fault")
        self.name = name
        self.faults = faults
        super().__init__(str(self))

    def __str__(self) -> str:
        """One line a fault: file, line, column, field, what was found, what is allowed."""
        return "\n".join(self._line(fault) for fault in self.faults)

    def _line(self, fault: Fault) -> str:
        place = self.name
        if fault.line is not None:
            place += f":{fault.line}"
            if fault.column is not None:
                place += f":{fault.column}"
        field = f" {fault.field}:" if fault.field else ""
        return f"{place}:{field} found {fault.found}; allowed: {fault.allowed}"
