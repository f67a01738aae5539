"""The picture of the week cut for the page: few enough days on each that words stay readable."""

from __future__ import annotations

from setwright.handout.pdf.fonts import own_letters
from setwright.handout.pdf.letters import spelled, uncommon
from setwright.handout.week_picture import week_picture
from setwright.plan.week import Plan, Session
from setwright.rehearsal.model import Rehearsal

# The room on the smaller sheet.
WIDTH, HEIGHT = 528.0, 680.0
# Days on a page while supersets have two exercises at most, and beyond.
DAYS, DAYS_WIDE = 4, 2


def week_pages(plan: Plan, rehearsal: Rehearsal) -> tuple[str, ...]:
    """The week as SVG pictures, in the order of its sessions.

    Args:
        plan: the week.
        rehearsal: the same week, rehearsed.
    """
    plan = _drawable(plan)
    most = DAYS if max(map(_lanes, plan.sessions)) <= 2 else DAYS_WIDE
    pages = -(-len(plan.sessions) // most)
    each = -(-len(plan.sessions) // pages)
    return tuple(
        week_picture(
            plan.model_copy(update={"sessions": plan.sessions[start : start + each]}),
            Rehearsal(rehearsal.sessions[start : start + each]),
            WIDTH,
            HEIGHT,
            f"week-{start + 1}",
        )
        for start in range(0, len(plan.sessions), each)
    )


def _drawable(plan: Plan) -> Plan:
    """The plan with its names as the face of the pictures, which have no second one, shows them."""
    rare = uncommon([plan.title, *(one.name for one in plan.sessions)])
    if not rare:
        return plan
    lacking = rare - own_letters()
    sessions = tuple(
        one.model_copy(update={"name": spelled(one.name, lacking)}) for one in plan.sessions
    )
    return plan.model_copy(update={"title": spelled(plan.title, lacking), "sessions": sessions})


def _lanes(session: Session) -> int:
    """The most exercises that are alternated."""
    letters = [entry.superset for entry in session.exercises if entry.superset]
    return max((letters.count(letter) for letter in letters), default=1)
