"""Why an exercise stands at its place in the session."""

from __future__ import annotations

from setwright.audit.context import Context, Placed
from setwright.handout.explained import Said
from setwright.handout.wording import listed

ORDER = ("practice-order", "exercise-order-meta-2021")
# From this loss on an exercise notices what stands before it.
NOTICES = 0.05


def place(context: Context, item: Placed) -> list[Said]:
    """First, among the compounds, or behind; and the partner it is alternated with."""
    said = [_order(context, item)]
    partners = [
        other
        for other in context.of_session(item.session)
        if item.entry.superset
        and other.entry.superset == item.entry.superset
        and other.position != item.position
    ]
    if partners:
        said.append(_pair(context, item, partners))
    return said


def _order(context: Context, item: Placed) -> Said:
    sets = context.rehearsed(item)
    lost = 1 - sets[0].possible / max(sets[0].fresh, 1.0)
    before = "no repetitions worth a word" if lost < NOTICES else f"{lost:.0%} of its repetitions"
    if item.position == 0:
        words = "It stands first, where the lifter is fresh."
        if item.exercise.kind == "compound":
            words = "It stands first: a compound is done while the lifter is fresh."
        return Said("place", words, ORDER)
    if item.exercise.kind == "compound":
        words = f"It follows other work, which costs it {before} on its first set."
        return Said("place", words, (*ORDER, "exercise-order-acute-reps-2005"))
    words = f"An isolation can stand late; what comes before costs it {before}."
    return Said("place", words, ORDER)


def _pair(context: Context, item: Placed, partners: list[Placed]) -> Said:
    names = listed([other.exercise.name for other in partners])
    own = context.rehearsed(item)
    gaps = [one.rest_s for one in own if one.rest_s > 0]
    words = f"It is alternated with {names}, so that one rests while the other works"
    if gaps:
        words += f"; {sum(gaps) / len(gaps) / 60:.1f} min pass between its own sets"
    return Said("place", f"{words}.", ("superset-meta-2025", "practice-superset-rest"))
