"""Lessons on the choice of exercises."""

from __future__ import annotations

from collections.abc import Mapping

from setwright.audit.criteria.redundancy import LEAST_OF_EVEN_SHARE
from setwright.audit.criteria.similar import MOST_ALIKE
from setwright.audit.criteria.spine import MOST_SESSION, MOST_TWO_DAYS
from setwright.handout.teaching.lesson import Lesson

EXERCISES: Mapping[str, Lesson] = {
    "merit": Lesson(
        "Which exercises",
        "One figure an exercise: its largest share, plus a bonus for load where the muscles are "
        "long, less what spinal load, set-up and wobble cost. 1 is a fully loaded target and "
        "nothing else.",
        "A set should end because the muscle it is for gives out, and not because grip, balance "
        "or the low back do.",
        "fair",
        "The idea is the trade's; the shares come from mechanics and imaging. That load at long "
        "length grows more is likely but small, with intervals that reach below zero. The weights "
        "of the figure are ours.",
        (
            (
                "muscle-length-regional-meta-2024",
                "mid-belly (50%)",
                "long against short muscle length, middle of the muscle",
            ),
            ("muscle-length-regional-meta-2024", "distal (75%)", "the same, far end of the muscle"),
            (
                "free-weight-vs-machine-meta",
                "all measured muscles pooled, free weight vs machine",
                "free weights against machines",
            ),
        ),
    ),
    "redundancy": Lesson(
        "Which exercises",
        "The growth the week would lose without the exercise, as a part of an even share: 1 means "
        "it carries as much as the average exercise, 0 that the others do its work already.",
        "What the rest of the week brings anyway is paid for in minutes and soreness without "
        "return.",
        "thin",
        "Hardly tested as such. It follows from diminishing returns, which are well shown; "
        f"{LEAST_OF_EVEN_SHARE:g} of an even share as the line is ours.",
        (),
    ),
    "similar": Lesson(
        "Which exercises",
        "Likeness of the two most alike exercises of a session, by what they train: 1 is the "
        f"same exercise. At most {MOST_ALIKE:g}.",
        "Two nearly equal exercises in a session ask the same parts twice and leave others out; "
        "they also take two set-ups for one effect.",
        "thin",
        "A rule of the trade and one review; the likeness at which it starts is ours.",
        (),
    ),
    "spinal-load": Lesson(
        "Which exercises",
        "Working sets weighted by how much the exercise loads the spine, 0 to 1: at most "
        f"{MOST_SESSION:g} in a session and {MOST_TWO_DAYS:g} over two days in a row, "
        "half of that with back pain in the answers.",
        "Squats, hinges and free rows add up on the low back, and a tired back ends sets that "
        "were meant for something else.",
        "thin",
        "Experience of the trade from memory. The loads are computed by our mechanics; the "
        "limits are ours and nobody has tested them.",
        (),
    ),
    "partials": Lesson(
        "Which exercises",
        "Partial repetitions in the long half of the range stand only on exercises that are "
        "hardest there, and not in a first week.",
        "They add load where the muscle is long. Where an exercise is light in that half they "
        "add nothing but soreness.",
        "fair",
        "Partials at long length beat partials at short length in a pooled analysis; against the "
        "full range a trial in trained people found no difference.",
        (("partials-long-vs-short-meta-2025", "overall", "partials at long against short length"),),
    ),
}
