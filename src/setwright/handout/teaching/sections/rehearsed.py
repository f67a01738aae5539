"""The sessions set by set, as rehearsed."""

from __future__ import annotations

from setwright.audit.context import Context
from setwright.audit.criteria.performance_kept import worst_kept
from setwright.handout.rehearsal_picture import KEY, rehearsal_picture
from setwright.handout.teaching.content import Block, Picture, Section, Words
from setwright.handout.wording import heading


def rehearsed_section(context: Context) -> Section:
    """A picture a session, and in words what falls off most in it."""
    blocks: list[Block] = [
        Words(
            "Each session was lived through on a clock before anyone lifts: every set takes "
            "repetitions from the sets after it, every rest gives some back. The figures are of "
            f"the middle person. In the panels: {KEY}.",
            ("rest-reps-bench-70-percent-2min-2022", "exercise-order-acute-reps-2005"),
        )
    ]
    for number, session in enumerate(context.plan.sessions):
        name = heading(session)
        blocks.append(
            Picture(
                f"rehearsal-{number + 1}",
                rehearsal_picture(
                    context.plan, context.rehearsal, [number], f"rehearsal-{number + 1}", False
                ),
                f"{name}, set by set: performance kept over the minutes, and repetitions possible "
                "on each set of each exercise",
                _said(context, number),
            )
        )
    return Section("rehearsed", "The sessions, set by set", tuple(blocks))


def _said(context: Context, number: int) -> str:
    rows = [
        (worst_kept(context.rehearsed(item))[1], item.exercise.name)
        for item in context.of_session(number)
        if len(context.rehearsed(item)) > 1
    ]
    if not rows:
        return "Every exercise has one set, so nothing can fall off within it."
    least, most = min(rows), max(rows)
    if len(rows) == 1:
        return f"{least[1]} keeps {least[0]:.0%} of its first set."
    return (
        f"{most[1]} holds best, with {most[0]:.0%} of its first set's repetitions left on the "
        f"worst later one; {least[1]} falls off most, to {least[0]:.0%}."
    )
