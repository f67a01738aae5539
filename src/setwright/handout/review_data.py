"""The review as plain data for machines."""

from __future__ import annotations

from typing import Any

from setwright.training.review import Review


def review_data(found: Review) -> dict[str, Any]:
    """Everything the printed review stands on, and the decisions taken."""
    facts = found.facts
    return {
        "person": facts.intake.name,
        "week": facts.monday.isoformat(),
        "up_to": facts.day.isoformat(),
        "block": facts.client.block.place(facts.monday.toordinal()),
        "sessions": [
            {**vars(one), "planned_on": one.planned_on.isoformat(), "done_on": _day(one.done_on)}
            for one in facts.sessions
        ],
        "kept": [{**vars(one), "monday": one.monday.isoformat()} for one in facts.kept],
        "left_out": facts.left_out,
        "unable": facts.unable,
        "left_unsaid": facts.unsaid,
        "strength": facts.changes,
        "rose": [one.exercise for one in facts.rose],
        "fell": [one.exercise for one in facts.fell],
        "stalls": [one.exercise for one in facts.stalls],
        "parts": facts.parts,
        "effort": facts.honesty,
        "pain": facts.pain,
        "symptoms": facts.symptoms,
        "odd": facts.odd,
        "proposals": [
            {**vars(one), "decision": found.decided.get(one.id)} for one in found.proposals
        ],
    }


def _day(day: Any) -> str | None:
    return None if day is None else day.isoformat()
