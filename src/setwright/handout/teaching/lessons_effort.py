"""Lessons on effort, repetitions and tempo."""

from __future__ import annotations

from collections.abc import Mapping

from setwright.audit.criteria import high_reps_compound, rep_range, rep_variety
from setwright.audit.criteria.effort_course import LAST_MOST
from setwright.audit.criteria.tempo import CONTROLLED_S, LONGEST_S, SHORTEST_S
from setwright.handout.teaching.lesson import Lesson

EFFORT: Mapping[str, Lesson] = {
    "effort-course": Lesson(
        "How hard, and how many repetitions",
        f"Repetitions in reserve on the last set, at most {LAST_MOST:g} (or what safety asks for), "
        "and an effort that rises and never falls over the sets.",
        "Sets far from failure grow less. Going to failure at once costs the sets that follow.",
        "good",
        "That nearer is better is well shown; that failure itself adds anything is not, for the "
        "interval of that contrast reaches below zero. Most estimates rest on lifters' own calls.",
        (
            (
                "proximity-failure-hypertrophy-meta-2023",
                "any definition of set failure vs non-failure",
                "to failure, however defined, against short of it",
            ),
            (
                "proximity-failure-hypertrophy-meta-2023",
                "momentary muscular failure vs non-failure",
                "to true failure against short of it",
            ),
        ),
    ),
    "effort-caps": Lesson(
        "How hard, and how many repetitions",
        "Where a bar can pin the lifter, or an answer of the intake asks for it, the planned "
        "repetitions in reserve keep to a floor.",
        "Stopping short costs little growth. A failed repetition under a free bar, alone, can "
        "cost a life.",
        "fair",
        "That accidents happen there is recorded; how many repetitions make it safe is not. The "
        "floors follow the trade and guidelines. Where it matters, ask a licensed professional.",
        (("free-bench-alone", "supine lift", "share of tracked deaths under a lift lying down"),),
    ),
    "rep-range": Lesson(
        "How hard, and how many repetitions",
        f"The ends of the band of repetitions against {rep_range.FEWEST} and {rep_range.MOST}.",
        "Over this range sets near failure grow alike. Heavier ones ask more of the joints for "
        "the same growth, lighter ones hurt and are hard to judge.",
        "good",
        "Well shown for the thigh and the arm in young adults; the ends of the range, and other "
        "muscles, are less sure. Above 12 repetitions calls of what is left get poor.",
        (
            (
                "load-20-40-60-80-percent-trial-2018",
                "vastus lateralis CSA gain, 20% 1RM",
                "thigh, sets at 20 % of 1RM",
            ),
            (
                "load-20-40-60-80-percent-trial-2018",
                "vastus lateralis CSA gain, 40% 1RM",
                "thigh, sets at 40 % of 1RM",
            ),
            (
                "load-20-40-60-80-percent-trial-2018",
                "vastus lateralis CSA gain, 80% 1RM",
                "thigh, sets at 80 % of 1RM",
            ),
            (
                "rir-accuracy-meta-2022",
                "mean under-prediction",
                "repetitions that lifters underrate what is left by",
            ),
        ),
    ),
    "rep-variety": Lesson(
        "How hard, and how many repetitions",
        f"Share of the week's sets with {rep_variety.FEWEST:g} to {rep_variety.MOST:g} "
        f"repetitions, at least {rep_variety.LEAST_SHARE:.0%}, and more than one band.",
        "The middle is quickest to do and easiest to judge; some lighter work spares joints.",
        "thin",
        "Any mix in the range grows alike, so this is about practice and not about growth.",
        (
            (
                "load-low-25-35-vs-8-12-reps-trained-2015",
                "quadriceps, 8-12 reps",
                "quadriceps, sets of 8 to 12",
            ),
            (
                "load-low-25-35-vs-8-12-reps-trained-2015",
                "quadriceps, 25-35 reps",
                "quadriceps, sets of 25 to 35",
            ),
        ),
    ),
    "compound-heavier": Lesson(
        "How hard, and how many repetitions",
        "Mean repetitions of a session's isolations less those of its compounds; not below 0.",
        "Many muscles and breath share a compound; at high repetitions breath ends the set. A "
        "small muscle at one joint takes lighter loads kindly.",
        "thin",
        "Common practice. We know of no trial that tested it for growth.",
        (),
    ),
    "high-reps-compound": Lesson(
        "How hard, and how many repetitions",
        "The top of the band of squats, lunges and hinges that tax the whole body: at most "
        f"{high_reps_compound.MOST:g}.",
        "Above that, breath tends to stop the set before the legs do.",
        "thin",
        "Common practice, from memory.",
        (),
    ),
    "tempo": Lesson(
        "How hard, and how many repetitions",
        f"Where a tempo is written, a repetition lasts {SHORTEST_S:g} to {LONGEST_S:g} s and is "
        f"lowered for at least {CONTROLLED_S:g} s. "
        "Blank means a controlled pace of one's own.",
        "Control keeps the load on the muscle. Very slow repetitions only make the load lighter.",
        "good",
        "From half a second to 8 s growth is alike, so the pace may follow taste; the limits "
        "inside that range are the trade's.",
        (
            (
                "repetition-duration-hypertrophy-meta-2015",
                "equivalent repetition duration",
                "repetitions that grew muscle alike",
            ),
        ),
    ),
}
