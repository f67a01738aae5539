"""What the week is expected to do, part by part."""

from __future__ import annotations

from setwright.audit.context import Context
from setwright.handout.content.coach import part_rows
from setwright.handout.dose_picture import dose_picture
from setwright.handout.teaching.content import Block, Picture, Section, Table, Words
from setwright.handout.teaching.response_plot import response_plot
from setwright.handout.wording import number

ALT = (
    "Curve of expected growth over effective sets a week, rising fast up to two sets and ever more "
    "slowly after, in a wide grey band; the parts of this week are dots on it"
)
SHORT_CAPTION = (
    "Expected growth of a part over its effective sets a week, for this person. Grey: the 80 % "
    "interval, wide because people respond so differently. Dots: the parts asked for."
)


def response_section(context: Context, in_full: bool) -> Section:
    """The curve with the person's parts on it; in full the dose of each part, too."""
    title = "What the week is expected to do"
    curve = Picture("response", response_plot(context, strip=in_full), ALT, SHORT_CAPTION)
    if not in_full:
        return Section("response", title, (curve,))
    blocks: list[Block] = [
        Words(
            "A set counts for a part by its share. Effort, repetitions, rest, load at long length "
            "and what other sets of the day already did then turn fractional sets into effective "
            "ones, and those into growth. The curve bends: the step from none to a few sets is "
            "worth more than any later one.",
            (
                "weekly-volume-frequency-meta-regression-2024",
                "weekly-volume-functional-form-2024",
                "session-volume-puos-2025",
            ),
        ),
        Picture(
            "response",
            curve.svg,
            ALT,
            f"{SHORT_CAPTION} Below, the same dots by muscle, the best trained first.",
        ),
        _ends(context),
        Picture(
            "dose",
            dose_picture(context.response, context.intake),
            "Bars of fractional sets a week for each part against a bracket from the least to the "
            "most its aim asks for; the table after it says the same",
            "Fractional sets a week. The bracket is the target, its notch a sound dose.",
        ),
        _table(context),
    ]
    return Section("response", title, tuple(blocks))


def _ends(context: Context) -> Words:
    """The parts with the least and the most expected growth among those asked for."""
    rows = [
        one for one in part_rows(context.response, context.intake) if one.standing != "no target"
    ]
    if not rows:
        return Words("The aims ask for no part.")
    least, most = min(rows, key=lambda one: one.sets), max(rows, key=lambda one: one.sets)
    below = sum(one.standing == "below" for one in rows)
    above = sum(one.standing == "above" for one in rows)
    within = len(rows) - below - above
    return Words(
        f"Of {len(rows)} parts that are asked for, {within} get a dose within their target, "
        f"{below} less and {above} more. {most.part.capitalize()} gets most, {number(most.sets)} "
        f"fractional sets, {least.part} least, {number(least.sets)}."
    )


def _table(context: Context) -> Table:
    return Table(
        "What each part gets: fractional sets a week, days with half a set or more, and expected "
        "growth with its 80 % interval",
        ("part", "sets", "target", "standing", "days", "growth, % a week"),
        tuple(
            (one.part, number(one.sets), one.target, one.standing, str(one.days), one.growth)
            for one in part_rows(context.response, context.intake)
            if one.sets > 0 or one.standing != "no target"
        ),
        figures=(1, 4, 5),
        stressed=("below", "above"),
    )
