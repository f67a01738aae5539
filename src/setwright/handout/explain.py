"""Why each exercise: statements a coach can teach from, each with its sources."""

from __future__ import annotations

from setwright.audit.audit import context_of
from setwright.audit.context import Context, Placed
from setwright.handout.cautions import cautions_text
from setwright.handout.explain_dose import dose
from setwright.handout.explain_place import place
from setwright.handout.explain_technique import technique
from setwright.handout.explain_why import why
from setwright.handout.explained import ExplainedExercise, ExplainedSession, Said
from setwright.handout.wording import folded
from setwright.plan.intake import Intake
from setwright.plan.week import Plan
from setwright.rehearsal.model import Rehearsal
from setwright.sources.library import findings

WIDTH = 96
LABELS = {
    "why": "why",
    "place": "place",
    "sets": "sets",
    "reps": "repetitions",
    "effort": "effort",
    "rest": "rest",
    "technique": "technique",
    "care": "take care",
}


def explain(
    plan: Plan, intake: Intake | None = None, rehearsal: Rehearsal | None = None
) -> tuple[ExplainedSession, ...]:
    """Explain a plan line by line.

    Args:
        plan: the week.
        intake: the person; without it an intermediate adult is assumed.
        rehearsal: the rehearsed plan when it was computed already.
    """
    context = context_of(plan, intake, rehearsal)
    return tuple(
        ExplainedSession(
            session.name,
            session.day,
            tuple(_exercise(context, item) for item in context.of_session(number)),
        )
        for number, session in enumerate(plan.sessions)
    )


def _exercise(context: Context, item: Placed) -> ExplainedExercise:
    said = (
        *why(context, item),
        *place(context, item),
        *dose(context, item),
        *technique(context, item),
    )
    return ExplainedExercise(
        item.exercise.id, item.exercise.name, item.entry.superset, said, item.exercise.cues
    )


def explained_text(sessions: tuple[ExplainedSession, ...], intake: Intake | None = None) -> str:
    """An explanation as text, sources as numbers with the list of them at the end."""
    numbers: dict[str, int] = {}
    blocks = []
    for session in sessions:
        title = f"{session.day.capitalize()}: {session.name}"
        blocks.append(f"{title}\n{'=' * len(title)}")
        for item in session.exercises:
            blocks.append(_block(item, numbers))
    blocks.append(cautions_text(intake))
    blocks.append("\n".join(["Sources", *_sources(numbers)]))
    return "\n\n".join(blocks)


def _block(item: ExplainedExercise, numbers: dict[str, int]) -> str:
    letter = f" ({item.superset})" if item.superset else ""
    lines = [f"{item.name}{letter}"]
    topic = ""
    for one in item.said:
        label = LABELS[one.topic] if one.topic != topic else ""
        topic = one.topic
        lines.append(_line(label, f"{one.words}{_marks(one, numbers)}"))
    lines.append(_line("cues", "; ".join(item.cues) + "."))
    return "\n".join(lines)


def _line(label: str, words: str) -> str:
    return folded(words, WIDTH, initial_indent=f"  {label:<13}", subsequent_indent=" " * 15)


def _marks(said: Said, numbers: dict[str, int]) -> str:
    if not said.sources:
        return ""
    given = [numbers.setdefault(ident, len(numbers) + 1) for ident in said.sources]
    return f" [{', '.join(str(one) for one in given)}]"


def _sources(numbers: dict[str, int]) -> list[str]:
    lines = []
    for ident, given in numbers.items():
        known = findings()[ident]
        cited = known.citations[0] if known.citations else None
        if cited is None:
            where = f"{known.basis}, {known.read}"
        else:
            place_ = ", ".join(
                str(one)
                for one in (cited.journal, cited.year, cited.doi and f"doi {cited.doi}")
                if one
            )
            where = f"{cited.title}. {place_}"
        lines.append(
            folded(
                f"{ident}: {known.finding} {where}",
                WIDTH,
                initial_indent=f"  {given:>3}  ",
                subsequent_indent=" " * 7,
                break_long_words=False,
            )
        )
    return lines
