"""A first week after inactivity or a break stays well under the usual volume."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.gaps import whole_sets
from setwright.audit.muscles import muscle_name, parts_of_muscles
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Remark
from setwright.audit.verdict import verdict_of
from setwright.plan.limits import volume_share

# The usual weekly sets of a muscle that the share is taken of.
USUAL_SETS = 12.0
EVIDENCE = ("rhabdo-spike", "rhabdo-novice-dose", "layoff-load-reset")


@criterion("volume-jump", "a first week does not leap in volume", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark a muscle, when the intake says that the person is new or comes back.

    A part is what gets sore: the muscle's most trained part over the week is judged.
    """
    share, evidence = volume_share(context.intake)
    if share >= 1.0:
        return
    most = share * USUAL_SETS
    for muscle, columns in parts_of_muscles().items():
        figure = round(float(context.response.weekly_sets[columns].max()), 1)
        if figure == 0:
            continue
        verdict = verdict_of(figure, high=most, margin=0.15 * most)
        mend = None
        if verdict != "holds":
            mend = Mend("drop sets", muscle_name(muscle), whole_sets(figure - most), "sets")
        yield Remark(
            "volume-jump",
            muscle_name(muscle),
            verdict,
            figure,
            "fractional sets a week",
            None,
            most,
            evidence,
            mend=mend,
        )
