"""Most muscles are trained at least twice a week."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.criteria.weekly_volume import band_of_muscle
from setwright.audit.muscles import muscle_name, parts_of_muscles, session_sets
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Remark, Verdict

# From this many fractional sets a session counts as training for the muscle.
COUNTS_FROM = 1.0
TWICE = 2
EVIDENCE = (
    "practice-frequency",
    "frequency-hypertrophy-meta-2016",
    "frequency-hypertrophy-meta-2019-scope",
)


@criterion("frequency", "most muscles twice a week; once is enough to maintain", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark a muscle that is asked for: sessions a week that train it."""
    if len(context.plan.sessions) < TWICE:
        return
    for muscle in parts_of_muscles():
        band = band_of_muscle(context, muscle)
        if band.least == 0:
            continue
        times = int((session_sets(context, muscle) >= COUNTS_FROM).sum())
        wanted = 1 if band.aim == "maintain" else TWICE
        verdict: Verdict = "holds"
        if times < wanted:
            # Weekly sets decide; once a week with all of them costs little.
            verdict = "misses" if band.aim == "emphasise" or times == 0 else "close"
        mend = None
        if verdict != "holds":
            mend = Mend("add sets", muscle_name(muscle), float(wanted - times), "sessions")
        yield Remark(
            "frequency",
            muscle_name(muscle),
            verdict,
            float(times),
            "sessions a week",
            float(wanted),
            None,
            EVIDENCE,
            mend=mend,
        )
