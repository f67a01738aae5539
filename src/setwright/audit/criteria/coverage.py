"""Every part gets something: what each gets, and what the large lifts leave out."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.anatomy.atlas import parts
from setwright.audit.context import Context
from setwright.audit.gaps import filler
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Remark
from setwright.audit.verdict import verdict_of
from setwright.exercises import catalogue
from setwright.response.targets import bands

# A part counts as reached from this share of the least its band asks for.
REACHED = 0.5
EVIDENCE = (
    "practice-squat-gaps",
    "practice-hinge-gaps",
    "full-vs-half-squat-mri",
    "minimum-dose-weekly-sets-secondary",
)


@criterion("coverage", "no part that counts is left out", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark a part that is asked for: fractional sets a week against half its least."""
    wanted = bands(context.intake)
    for column, part in enumerate(parts()):
        least = wanted[part.id].least * REACHED
        if least == 0:
            continue
        figure = round(float(context.response.weekly_sets[column]), 1)
        verdict = verdict_of(figure, low=least, margin=0.4 * least)
        mend = None
        if verdict != "holds":
            ident = filler(column, context.intake)
            if ident is not None:
                share = float(catalogue.shares()[catalogue.row(ident), column])
                sets = max(2.0, -(-(least - figure) // max(share, 0.1)))
                mend = Mend("add exercise", ident, sets, "sets", figure + sets * share)
            else:
                mend = Mend("accept", part.name)
        yield Remark(
            "coverage",
            part.name,
            verdict,
            figure,
            "fractional sets a week",
            least,
            None,
            EVIDENCE,
            mend=mend,
        )
