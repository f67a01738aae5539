"""What a session is called where it must be told from the others of its week."""

from __future__ import annotations

from setwright.plan.week import Plan


def session_label(plan: Plan, number: int) -> str:
    """Its name; with its day where two sessions share the name."""
    session = plan.sessions[number]
    alike = [one for one in plan.sessions if one.name == session.name]
    return session.name if len(alike) == 1 else f"{session.name} ({session.day})"


def labels(plan: Plan) -> tuple[str, ...]:
    """Labels of all sessions, in the plan's order."""
    return tuple(session_label(plan, number) for number in range(len(plan.sessions)))
