"""What an explanation holds."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Topic = Literal["why", "place", "sets", "reps", "effort", "rest", "technique", "care"]


@dataclass(frozen=True)
class Said:
    """One plain statement.

    Attributes:
        topic: what it explains.
        words: one or two sentences.
        sources: ids of the findings it stands on; empty when it only restates the plan or the
            mechanics.
    """

    topic: Topic
    words: str
    sources: tuple[str, ...] = ()


@dataclass(frozen=True)
class ExplainedExercise:
    """Why one exercise stands where it stands.

    Attributes:
        exercise: catalogue id.
        name: the trade's name.
        superset: letter, or None.
        said: the statements, in the order of the topics.
        cues: how to do it.
    """

    exercise: str
    name: str
    superset: str | None
    said: tuple[Said, ...]
    cues: tuple[str, ...]


@dataclass(frozen=True)
class ExplainedSession:
    """One session explained, in its order."""

    name: str
    day: str
    exercises: tuple[ExplainedExercise, ...]
