"""Within a session compounds are heavier, isolations lighter."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark
from setwright.audit.verdict import verdict_of

EVIDENCE = ("practice-compound-heavier",)


def _middle(band: tuple[int, int]) -> float:
    return (band[0] + band[1]) / 2


@criterion("compound-heavier", "compounds heavier, isolations lighter", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark a session with both kinds: mean repetitions of isolations minus compounds."""
    for number, session in enumerate(context.plan.sessions):
        middles: dict[str, list[float]] = {"compound": [], "isolation": []}
        for item in context.of_session(number):
            middles[item.exercise.kind].append(_middle(item.entry.reps))
        if not middles["compound"] or not middles["isolation"]:
            continue
        mean = {kind: sum(found) / len(found) for kind, found in middles.items()}
        # Judged as it is shown, and nothing never with a sign.
        gap = round(mean["isolation"] - mean["compound"], 1) + 0.0
        verdict = verdict_of(gap, low=0.0, margin=3.0)
        mend = None
        if verdict != "holds":
            more = float(ceil(-gap - 1e-9))
            target = f"isolations of {session.name}"
            mend = Mend("raise reps", target, more, "repetitions", gap + more)
        yield Remark(
            "compound-heavier",
            context.session_subject(number),
            verdict,
            gap,
            "repetitions more on isolations",
            0.0,
            None,
            EVIDENCE,
            Place(number),
            mend,
        )
