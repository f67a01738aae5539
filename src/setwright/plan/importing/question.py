"""What an import asks, and what may be answered."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

KEEP = "keep"
LEAVE_OUT = "leave out"
LINE_ANSWERS = (KEEP, LEAVE_OUT)


@dataclass(frozen=True)
class Question:
    """One question; it may concern many lines.

    Attributes:
        key: what the question is about; questions of one key are one.
        kind: of the question, for machines.
        lines: lines held back until it is answered.
        column: heading of the cell in question, or ''.
        found: what stands there.
        asks: the question, in plain words.
        answers: what may be answered, each as ``--answer`` takes it.
    """

    key: str
    kind: str
    lines: tuple[int, ...]
    column: str
    found: str
    asks: str
    answers: tuple[str, ...]


class DoubtError(Exception):
    """A line that cannot be read without asking."""

    def __init__(self, question: Question) -> None:
        super().__init__(question.asks)
        self.question = question


def grouped(questions: Iterable[Question]) -> tuple[Question, ...]:
    """Questions of one key made one, with all their lines."""
    by_key: dict[str, Question] = {}
    lines: dict[str, list[int]] = {}
    for question in questions:
        by_key.setdefault(question.key, question)
        lines.setdefault(question.key, []).extend(question.lines)
    return tuple(
        Question(
            key,
            one.kind,
            tuple(sorted(set(lines[key]))),
            one.column,
            one.found,
            one.asks,
            one.answers,
        )
        for key, one in by_key.items()
    )


def spread(answers: Mapping[str, str]) -> dict[str, str]:
    """Answers by key, the keys compared without case and surplus blanks."""
    return {" ".join(key.casefold().split()): value.strip() for key, value in answers.items()}


def key_of(*pieces: object) -> str:
    """A key from its pieces."""
    return " ".join(" ".join(str(piece).casefold().split()) for piece in pieces)
