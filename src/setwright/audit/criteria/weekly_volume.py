"""Weekly sets of each muscle against what the person wants of it."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.gaps import filler, whole_sets
from setwright.audit.muscles import muscle_name, parts_of_muscles, session_sets
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Remark
from setwright.audit.verdict import verdict_of
from setwright.exercises import catalogue
from setwright.response.targets import Band, bands

EVIDENCE = (
    "weekly-volume-meta-2017-per-set",
    "weekly-volume-frequency-meta-regression-2024",
    "weekly-volume-over-20-sets-review-2022",
    "time-efficient-training-review-2021",
)
# The strictest aim among a muscle's parts speaks for the muscle.
_STRICT = ("emphasise", "normal", "maintain", "leave out")


def band_of_muscle(context: Context, muscle: str) -> Band:
    """The band of a muscle: that of its part with the strictest aim."""
    wanted = bands(context.intake)
    members = [
        wanted[context.response.parts[column]] for column in parts_of_muscles()[muscle].tolist()
    ]
    return min(members, key=lambda band: (_STRICT.index(band.aim), -band.least))


@criterion("weekly-volume", "each muscle gets the sets its aim asks for", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark a muscle that is asked for or trained: fractional sets a week."""
    for muscle, columns in parts_of_muscles().items():
        band = band_of_muscle(context, muscle)
        figure = round(float(session_sets(context, muscle).sum()), 1)
        if band.least == 0 and figure <= band.most:
            continue
        over = figure > band.most
        margin = 0.25 * band.most if over else 0.3 * band.least
        verdict = verdict_of(figure, band.least, band.most, margin)
        mend = None
        if verdict != "holds":
            if over:
                sets = whole_sets(figure - band.most)
                mend = Mend("drop sets", muscle_name(muscle), sets, "sets")
            else:
                ident = filler(int(columns[0]), context.intake)
                share = 1.0
                if ident is not None:
                    share = float(catalogue.shares()[catalogue.row(ident), columns].max())
                sets = whole_sets((band.least - figure) / share)
                target = ident or muscle_name(muscle)
                mend = Mend("add sets", target, sets, "sets", figure + sets * share)
        yield Remark(
            "weekly-volume",
            muscle_name(muscle),
            verdict,
            figure,
            "fractional sets a week",
            band.least,
            band.most,
            band.evidence,
            mend=mend,
            detail=(("aim", band.aim), ("good", band.good)),
        )
