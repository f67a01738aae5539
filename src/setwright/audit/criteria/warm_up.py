"""Enough warm-up before the first heavy lift, and no more than one set once an area is warm."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Place, Remark
from setwright.audit.verdict import verdict_of

# Share of the session that ramp sets may take.
MOST_SHARE = 0.2
EVIDENCE = ("warm-up-40-vs-80-percent-of-load-2020", "warm-count-by-load", "practice-warm-up")


@criterion("warm-up", "ramp sets before heavy work, few once the area is warm", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark a session: share of its time spent on ramp sets."""
    for number, lived in enumerate(context.rehearsal.sessions):
        share = lived.warm_up_s / max(lived.total_s, 1.0)
        yield Remark(
            "warm-up",
            context.session_subject(number),
            verdict_of(share, high=MOST_SHARE, margin=0.15),
            round(share, 2),
            "of the session",
            None,
            MOST_SHARE,
            EVIDENCE,
            Place(number),
            None,
            (("ramp_sets", float(len(lived.warm_up))),),
        )
