"""The picture of the week cut for the page: few enough days on each that words stay readable."""

from __future__ import annotations

from io import BytesIO

from setwright.handout.drawing import STYLE
from setwright.handout.pdf.fonts import folder, has
from setwright.handout.pdf.letters import spelled, uncommon
from setwright.handout.week_picture import week_picture
from setwright.plan.week import Plan, Session
from setwright.rehearsal.model import Rehearsal

# The room on the smaller sheet.
PAGE_IN, HIGH_IN = 7.3, 9.4
# Days on a page while supersets have two exercises at most, and beyond.
DAYS, DAYS_WIDE = 4, 2
# The face of the pictures, which have no second one.
FACE = "DejaVuSerif.ttf"


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
        _page(
            plan.model_copy(update={"sessions": plan.sessions[start : start + each]}),
            Rehearsal(rehearsal.sessions[start : start + each]),
        )
        for start in range(0, len(plan.sessions), each)
    )


def _drawable(plan: Plan) -> Plan:
    """The plan with its names as the face of the pictures can show them."""
    place = folder()
    rare = uncommon([plan.title, *(one.name for one in plan.sessions)])
    if not rare or place is None:
        return plan
    lacking = rare - has(str(place / FACE), 0)
    sessions = tuple(
        one.model_copy(update={"name": spelled(one.name, lacking)}) for one in plan.sessions
    )
    return plan.model_copy(update={"title": spelled(plan.title, lacking), "sessions": sessions})


def _lanes(session: Session) -> int:
    """The most exercises that are alternated."""
    letters = [entry.superset for entry in session.exercises if entry.superset]
    return max((letters.count(letter) for letter in letters), default=1)


def _page(plan: Plan, rehearsal: Rehearsal) -> str:
    from matplotlib import rc_context

    figure = week_picture(plan, rehearsal, width_in=PAGE_IN, height_in=HIGH_IN)
    into = BytesIO()
    with rc_context(STYLE):  # type: ignore[arg-type]
        figure.savefig(into, format="svg", metadata={"Date": None})
    return into.getvalue().decode("utf-8")
