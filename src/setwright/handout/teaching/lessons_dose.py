"""Lessons on dose: sets a week, sets a session, days, coverage."""

from __future__ import annotations

from collections.abc import Mapping

from setwright.audit.criteria.recovery import MOST_BOTH_DAYS
from setwright.audit.criteria.session_volume import MOST, PLATEAU
from setwright.audit.criteria.volume_jump import USUAL_SETS
from setwright.handout.teaching.lesson import Lesson

DOSE: Mapping[str, Lesson] = {
    "weekly-volume": Lesson(
        "How much, and how often",
        "Every working set counts for each part by its share: a set whose work falls half on a "
        "part is half a fractional set for it. Their sum over the week must lie between the least "
        "and the most that the aim for the muscle asks for.",
        "Weekly sets are the lever that moves growth most and costs most time. The first few pay "
        "best; each further one adds less.",
        "good",
        "That more sets grow more is well shown up to about 20 a week; how far beyond, and for "
        "whom, is not. Trials count sets of a muscle, not of its heads, so the split over parts "
        "rests on mechanics and a handful of imaging studies.",
        (
            (
                "weekly-volume-meta-2017-per-set",
                "extra percentage gain per additional weekly set",
                "growth that each further weekly set went with",
            ),
            (
                "weekly-volume-meta-2017-per-set",
                "higher minus lower weekly volume within study",
                "effect of more against fewer weekly sets within a study",
            ),
        ),
    ),
    "coverage": Lesson(
        "How much, and how often",
        "Each part that the aims ask for gets at least half of its least weekly dose. Below that "
        "it counts as left out.",
        "Big lifts leave parts behind: a squat does little for rectus femoris, a hinge little for "
        "the short head of biceps femoris. A part without sets does not grow, whatever the rest "
        "of its muscle does.",
        "fair",
        "Which parts the big lifts leave short is partly imaged and partly experience of the "
        "trade. Half of the least dose as the line is our choice.",
        (
            (
                "full-vs-half-squat-mri",
                "knee extensors (whole quadriceps), full squat",
                "quadriceps after ten weeks of full squats",
            ),
            (
                "full-vs-half-squat-mri",
                "gluteus maximus, full squat",
                "gluteus maximus after the same squats",
            ),
            (
                "minimum-dose-weekly-sets-secondary",
                "detectable hypertrophy",
                "dose at which growth begins to show",
            ),
        ),
    ),
    "frequency": Lesson(
        "How much, and how often",
        "The number of days on which a muscle gets one fractional set or more: two for most, one "
        "where the aim is to maintain.",
        "Two days let the same weekly sets be done fresher, and a missed day costs half and not "
        "all.",
        "fair",
        "With equal weekly sets, days matter little. The rule is a way of fitting sets in more "
        "than a cause of growth, so a single day is called close and not a miss.",
        (
            (
                "frequency-hypertrophy-meta-2016",
                "ES, higher frequency",
                "growth with more days a week",
            ),
            (
                "frequency-hypertrophy-meta-2016",
                "ES, lower frequency",
                "growth with fewer days a week",
            ),
        ),
    ),
    "session-volume": Lesson(
        "How much, and how often",
        f"Fractional sets of a muscle in its fullest session, against the {PLATEAU:g} beyond which "
        f"no further growth could be detected. The trade goes up to {MOST:g}.",
        "Sets past that point cost minutes and recovery and bring little; on another day they "
        "would still count.",
        "fair",
        "One pooled analysis, still a preprint, which we know from a secondary page. It says "
        "where gains can no longer be seen, not where they end.",
        (
            (
                "session-volume-puos-2025",
                "point of undetectable outcome superiority - hypertrophy",
                "sets in a session beyond which more growth could not be told",
            ),
        ),
    ),
    "recovery": Lesson(
        "How much, and how often",
        "For a muscle trained on two days in a row: the fractional sets of the lighter day. Up to "
        f"{MOST_BOTH_DAYS:g} are fine.",
        "A muscle that worked hard yesterday does fewer repetitions today, so the second session "
        "is worth less.",
        "fair",
        "Small acute studies that disagree: losses after a day in some, none over four days in "
        f"highly trained men. They measure repetitions, not growth; {MOST_BOTH_DAYS:g} sets as the "
        "line is ours.",
        (
            (
                "recovery-reps-single-vs-multi-joint-24-48h-2015",
                "24 h, multi-joint",
                "repetitions a day later, compounds",
            ),
            (
                "recovery-reps-single-vs-multi-joint-24-48h-2015",
                "24 h, single-joint",
                "repetitions a day later, isolations",
            ),
        ),
    ),
    "volume-jump": Lesson(
        "How much, and how often",
        "Only for a person who is new or comes back: no part gets more in the first week than a "
        f"share of the usual {USUAL_SETS:g} sets.",
        "A sudden leap in volume makes very sore, and in rare cases does real harm to muscle.",
        "thin",
        "Case reports and experience of the trade. Nobody has tested where a leap begins.",
        (),
    ),
}
