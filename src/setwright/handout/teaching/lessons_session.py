"""Lessons on the session as it goes: order, rest, supersets, minutes."""

from __future__ import annotations

from collections.abc import Mapping

from setwright.audit.criteria.order import MOST_LOST
from setwright.audit.criteria.performance_kept import LEAST_KEPT
from setwright.audit.criteria.rest import COMPOUND_S, FLOOR_S, LONGEST_S, SMALL_ISOLATION_S
from setwright.audit.criteria.supersets import MOST_OVERLAP
from setwright.audit.criteria.warm_up import MOST_SHARE
from setwright.handout.teaching.lesson import Lesson

SESSION: Mapping[str, Lesson] = {
    "time": Lesson(
        "The session on the clock",
        "Minutes of the session as rehearsed: warm-up, change-overs, sets and rests one after "
        "the other, against the minutes there are.",
        "A session that runs over gets cut, and what stands last is what falls away.",
        "fair",
        "The sum is arithmetic and was held against timed sessions. People differ, hence the "
        "interval; a busy gym is not in it.",
        (
            ("clock-benchmarks", "straight 24 sets", "24 sets one after the other"),
            ("clock-benchmarks", "superset 24 sets", "24 sets as supersets"),
        ),
    ),
    "order": Lesson(
        "The session on the clock",
        "For a compound that follows other work: the share of its fresh repetitions that is gone "
        f"before its first set, at most {MOST_LOST:.0%}.",
        "What comes late is done with less. Strength follows what comes first; so should what "
        "the person wants most.",
        "fair",
        "Order changes repetitions and strength, but no effect on growth was found. The limit is "
        "ours, and the loss is predicted, not measured on this person.",
        (
            (
                "exercise-order-meta-2021",
                "strength in multi-joint tests",
                "compounds first against last, strength on compounds",
            ),
            ("exercise-order-meta-2021", "hypertrophy", "compounds first against last, growth"),
        ),
    ),
    "rest": Lesson(
        "The session on the clock",
        f"The middle of the range of rest: at least {COMPOUND_S} s on compounds, "
        f"{SMALL_ISOLATION_S} s on isolations and {FLOOR_S} s in a superset, at most "
        f"{LONGEST_S / 60:g} min.",
        "Too short, and repetitions fall away; too long, and minutes are spent that another set "
        "could use.",
        "fair",
        "The pooled effect of longer rest on growth is small and its interval spans zero in every "
        "region. Where sets were added to make up for short rest, growth was the same.",
        (
            (
                "rest-hypertrophy-bayes-meta-2024",
                "longer minus short, arm",
                "longer less short rest, arm",
            ),
            (
                "rest-hypertrophy-bayes-meta-2024",
                "longer minus short, thigh",
                "longer less short rest, thigh",
            ),
            (
                "rest-hypertrophy-bayes-meta-2024",
                "longer minus short, whole body",
                "longer less short rest, whole body",
            ),
        ),
    ),
    "performance-kept": Lesson(
        "The session on the clock",
        "Repetitions possible on the worst later set over those on the first, as rehearsed; at "
        f"least {LEAST_KEPT:.0%}.",
        "Rest is long enough when repetitions hold. A set that does half of the first one is "
        "half a set of work for a whole set of time.",
        "fair",
        "That repetitions fall with short rest is plain in every study; that the loss costs "
        "growth was seen in one trial of the thigh. The limit is ours.",
        (
            ("rest-volume-load-matched-trial-2022", "QCSA gain, 3 min", "thigh, 3 min of rest"),
            ("rest-volume-load-matched-trial-2022", "QCSA gain, 1 min", "thigh, 1 min of rest"),
            (
                "rest-volume-load-matched-trial-2022",
                "QCSA gain, 1 min with volume load matched up",
                "thigh, 1 min of rest with sets added to make up for it",
            ),
        ),
    ),
    "feasible": Lesson(
        "The session on the clock",
        "Repetitions to failure that will be possible on the worst set, against the lowest of "
        "the band.",
        "A band that cannot be reached makes the person cut the load or cheat, and the log says "
        "little afterwards.",
        "fair",
        "How far repetitions fall differs from person to person. The rehearsal is fitted to "
        "published sets and gives an interval; the first week on the floor says more.",
        (
            ("rest-reps-bench-70-percent-2min-2022", "set 1", "bench press to failure, first set"),
            ("rest-reps-bench-70-percent-2min-2022", "set 2", "second set after 2 min"),
            ("rest-reps-bench-70-percent-2min-2022", "set 3", "third set after 2 min"),
        ),
    ),
    "supersets": Lesson(
        "The session on the clock",
        "Share of the smaller exercise's work that falls on parts both partners train; at most "
        f"{MOST_OVERLAP:.0%}.",
        "Alternating exercises that share nothing saves minutes at no cost. Partners that share "
        "muscles tire each other.",
        "good",
        "Equal growth and the saving of time are pooled over trials; which pairs cost repetitions "
        "is shown for opposing and for equal muscles, with little in between.",
        (
            ("superset-meta-2025", "hypertrophy", "supersets against straight sets, growth"),
            ("superset-meta-2025", "training efficiency", "the same, work done in a minute"),
            (
                "superset-meta-2025",
                "volume load, same-muscle pairs",
                "the same, work done when partners share a muscle",
            ),
        ),
    ),
    "warm-up": Lesson(
        "The session on the clock",
        f"Share of the session spent on ramp sets; at most {MOST_SHARE:.0%}.",
        "Some heavy repetitions beforehand help the first working set. More of them only tire.",
        "thin",
        "One small trial of two lifts, and practice. Nothing on growth.",
        (),
    ),
}
