"""Why each exercise stands where it stands."""

from __future__ import annotations

from setwright.handout.explained import ExplainedExercise, ExplainedSession, Topic
from setwright.handout.teaching.content import Points, Section, Words

# Sets, repetitions and effort are taught once, under their criteria.
SHOWN: tuple[Topic, ...] = ("why", "place", "sets", "rest", "technique", "care")


def exercise_sections(sessions: tuple[ExplainedSession, ...]) -> tuple[Section, ...]:
    """A list of statements an exercise, session by session.

    Args:
        sessions: from ``explain``.
    """
    intro = Words(
        "What each exercise is there for, why it stands at its place, and what to watch. Why "
        "effort and repetitions are as they are is told under their criteria."
    )
    found = [Section("exercises", "Exercise by exercise", (intro,))]
    for number, session in enumerate(sessions, start=1):
        title = f"{session.day.capitalize()}: {session.name}"
        blocks = tuple(_said(one) for one in session.exercises)
        found.append(Section(f"exercises-{number}", title, blocks, level=3))
    return tuple(found)


def _said(item: ExplainedExercise) -> Points:
    letter = f" ({item.superset})" if item.superset else ""
    cues = Words(f"Cues: {'; '.join(item.cues)}.") if item.cues else None
    said = [Words(one.words, one.sources) for one in item.said if one.topic in SHOWN]
    return Points((*said, *([cues] if cues else [])), f"{item.name}{letter}")
