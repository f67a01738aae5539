"""An exercise earns its place: it trains something fully, loads it long, and costs little."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark
from setwright.audit.verdict import verdict_of
from setwright.exercises import catalogue

# Weights of the figure: the limiting part's share, its loaded stretch, and the costs.
STRETCH_WEIGHT, SPINE_COST, SETUP_COST_PER_MIN, UNSTABLE_COST = 0.3, 0.3, 0.05, 0.2
LEAST = 0.55
EVIDENCE = (
    "practice-limiting-muscle",
    "muscle-length-regional-meta-2024",
    "free-weight-vs-machine-meta",
)


def merit_of(exercise_id: str) -> float:
    """Merit of an exercise: 1 is a fully loaded target without stretch bonus or cost."""
    exercise = catalogue.exercise(exercise_id)
    profile = catalogue.profile(exercise_id)
    best = max((share.value for share in profile.shares), default=0.0)
    return (
        best
        + STRETCH_WEIGHT * profile.loaded_stretch
        - SPINE_COST * profile.spinal_load
        - SETUP_COST_PER_MIN * exercise.setup_s / 60
        - UNSTABLE_COST * (1 - exercise.stability)
    )


@criterion("merit", "the target limits the set, is loaded long, and the cost is small", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark an exercise."""
    for item in context.placed:
        figure = merit_of(item.exercise.id)
        verdict = verdict_of(figure, low=LEAST, margin=0.35)
        mend = None if verdict == "holds" else Mend("swap exercise", item.exercise.id)
        profile = catalogue.profile(item.exercise.id)
        yield Remark(
            "merit",
            context.subject(item),
            verdict,
            round(figure, 2),
            "merit",
            LEAST,
            None,
            EVIDENCE,
            Place(item.session, item.position),
            mend,
            (
                ("stretch", round(profile.loaded_stretch, 2)),
                ("spine", round(profile.spinal_load, 2)),
                ("setup_s", float(item.exercise.setup_s)),
            ),
        )
