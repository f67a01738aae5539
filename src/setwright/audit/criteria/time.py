"""Each session fits its minutes."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark
from setwright.audit.verdict import verdict_of

# A clock in a gym is not exact: this much over is close, not a miss.
MARGIN_SHARE = 0.05
EVIDENCE = ("clock-formula", "clock-benchmarks", "session-time-barrier")


@criterion("time", "each session fits the minutes to be had", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark a session whose minutes are known."""
    minutes_of = {day.day: day.minutes for day in context.intake.days} if context.intake else {}
    for number, session in enumerate(context.plan.sessions):
        limit = session.minutes or minutes_of.get(session.day)
        if limit is None:
            continue
        lived = context.rehearsal.sessions[number]
        needed = lived.total_s / 60
        verdict = verdict_of(needed, high=limit, margin=MARGIN_SHARE * limit)
        mend = None
        if verdict != "holds":
            per_set = (lived.working_s + lived.resting_s) / 60 / max(len(lived.sets), 1)
            sets = -(-(needed - limit) // per_set)
            mend = Mend("drop sets", session.name, float(sets), "sets", needed - sets * per_set)
        yield Remark(
            "time",
            context.session_subject(number),
            verdict,
            round(needed, 1),
            "min",
            None,
            float(limit),
            EVIDENCE,
            Place(number),
            mend,
            (("low", round(lived.low_s / 60, 1)), ("high", round(lived.high_s / 60, 1))),
        )
