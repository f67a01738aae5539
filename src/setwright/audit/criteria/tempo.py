"""Repetitions last 2 to 8 seconds, with a controlled lowering."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context, Placed
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark
from setwright.audit.verdict import verdict_of

SHORTEST_S, LONGEST_S, CONTROLLED_S = 2.0, 8.0, 1.0
EVIDENCE = ("repetition-duration-hypertrophy-meta-2015", "practice-tempo")


@criterion("tempo", "a repetition lasts 2 to 8 s and the lowering is controlled", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark an exercise that writes a tempo, and one for the rest together."""
    silent = [item for item in context.placed if item.entry.tempo is None]
    for item in context.placed:
        if item.entry.tempo is not None:
            yield _remark(context, item)
    if silent:
        yield Remark(
            "tempo",
            "week",
            "holds",
            float(len(silent)),
            "exercises at their own controlled pace",
            None,
            None,
            EVIDENCE,
        )


def _remark(context: Context, item: Placed) -> Remark:
    tempo = item.entry.tempo
    assert tempo is not None
    seconds = tempo.lowering_s + tempo.stretched_s + tempo.lifting_s + tempo.top_s
    verdict = verdict_of(seconds, SHORTEST_S, LONGEST_S, margin=2.0)
    mend = None
    if verdict != "holds":
        wanted = min(max(seconds, SHORTEST_S), LONGEST_S)
        mend = Mend("change tempo", item.exercise.id, round(wanted - seconds, 2), "s", wanted)
    elif tempo.lowering_s < CONTROLLED_S:
        verdict = "close"
        missing = round(CONTROLLED_S - tempo.lowering_s, 2)
        mend = Mend("lengthen lowering", item.exercise.id, missing, "s")
    return Remark(
        "tempo",
        context.subject(item),
        verdict,
        seconds,
        "s a repetition",
        SHORTEST_S,
        LONGEST_S,
        EVIDENCE,
        Place(item.session, item.position),
        mend,
        (("lowering_s", tempo.lowering_s),),
    )
