"""Lessons on what the person and the gym allow."""

from __future__ import annotations

from collections.abc import Mapping

from setwright.handout.teaching.lesson import Lesson

PERSON: Mapping[str, Lesson] = {
    "screening": Lesson(
        "The person and the gym",
        "Whether the answers of the intake let training begin, or ask that a licensed "
        "professional clears it first.",
        "A few people should see somebody before they train hard. The questions find most of "
        "them; the coach neither diagnoses nor treats.",
        "fair",
        "Agreed among experts rather than tested in trials.",
        (),
    ),
    "exclusions": Lesson(
        "The person and the gym",
        "No exercise that the person has to leave out, for pain, dislike or lack of skill.",
        "A plan that hurts or is disliked is not done. There is nearly always another way to "
        "train the same part.",
        "fair",
        "That some pain may be worked with is shown for a few complaints; for the rest it is the "
        "trade's rule. Pain that stays belongs to a licensed professional.",
        (
            ("pain-scale", "safe max", "known pain that may be worked with, of 10"),
            ("pain-scale", "acceptable max", "the most, if it settles by the next morning, of 10"),
        ),
    ),
    "kit": Lesson(
        "The person and the gym",
        "The gym has what each exercise needs and can make the load that is written.",
        "A load that cannot be made is rounded on the floor, by a tired person, usually up.",
        "thin",
        "Arithmetic and practice; nothing to test.",
        (),
    ),
}
