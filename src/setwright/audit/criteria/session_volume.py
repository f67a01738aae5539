"""A muscle gets 5 to 15 sets in a session when it is trained two to three times a week."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.gaps import whole_sets
from setwright.audit.muscles import muscle_name, parts_of_muscles, session_sets
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark
from setwright.audit.verdict import verdict_of

# Beyond this many fractional sets a session no further benefit could be found.
PLATEAU = 11.0
MOST = 15.0
EVIDENCE = ("session-volume-puos-2025", "practice-sets-per-session")


@criterion("session-volume", "no more sets for a muscle in a session than still help", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark a muscle: its fullest session against the plateau and the trade's 15."""
    for muscle in parts_of_muscles():
        sets = session_sets(context, muscle)
        number = int(sets.argmax())
        figure = round(float(sets[number]), 1)
        if figure == 0:
            continue
        verdict = verdict_of(figure, high=PLATEAU, margin=MOST - PLATEAU)
        mend = None
        if verdict != "holds":
            mend = Mend("move day", muscle_name(muscle), whole_sets(figure - PLATEAU), "sets")
        yield Remark(
            "session-volume",
            muscle_name(muscle),
            verdict,
            figure,
            "fractional sets in a session",
            None,
            PLATEAU,
            EVIDENCE,
            Place(number),
            mend,
        )
