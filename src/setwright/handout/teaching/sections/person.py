"""Whom the week is for, and what was asked."""

from __future__ import annotations

from setwright.audit.context import Context
from setwright.documents.units import load_words
from setwright.exercises import catalogue
from setwright.handout.teaching.content import Section, Table, Words
from setwright.handout.wording import counted, listed, number
from setwright.plan.intake import Avoidance, Intake, KnownLoad
from setwright.plan.limits import clearance, volume_share

ASSUMED = (
    "No intake was given, so the week is read as one for an intermediate adult of 18 to 39 years "
    "with the usual aims, a full gym and no limits. With an intake every figure below would be "
    "this person's own."
)


def person_section(context: Context) -> Section:
    """What the intake says, as far as it shaped the figures."""
    title = "Who it is for, and what was asked"
    intake = context.intake
    if intake is None:
        return Section("person", title, (Words(ASSUMED),))
    rows = [(label, words) for label, words in _rows(intake) if words]
    table = Table("From the intake", ("asked", "answer"), tuple(rows), wide=(1,))
    blocks: list[Words | Table] = [table]
    share, sources = volume_share(intake)
    if share < 1:
        blocks.append(
            Words(f"In this first week a part is asked for {share:.0%} of the usual dose.", sources)
        )
    needed = clearance(intake)
    if needed is not None:
        blocks.append(
            Words(
                "Before the first session a licensed professional should clear training: "
                f"{needed.because}.",
                needed.evidence,
            )
        )
    return Section("person", title, tuple(blocks))


def _rows(intake: Intake) -> list[tuple[str, str]]:
    aims = intake.aims
    days = [f"{one.day.capitalize()} {one.minutes} min" for one in intake.days]
    return [
        ("person", f"{intake.name}: {intake.experience}, {intake.age_band}"),
        ("days", listed(days)),
        ("split", "" if intake.split == "auto" else intake.split),
        ("to emphasise", listed(list(aims.emphasise))),
        ("to maintain", listed(list(aims.maintain))),
        ("to leave out", listed(list(aims.leave_out))),
        ("place", f"{_gym(intake)}; trains {intake.setting}"),
        ("to avoid", "; ".join(_avoided(one) for one in intake.avoid)),
        ("known loads", "; ".join(_known(one, intake) for one in intake.known_loads)),
        (
            "done before this week",
            "; ".join(
                f"{one.day.capitalize()}: "
                + listed([f"{counted(sets, 'set')} of {what}" for what, sets in one.sets.items()])
                for one in intake.earlier_this_week
            ),
        ),
    ]


def _gym(intake: Intake) -> str:
    if intake.gym != "listed":
        return intake.gym
    return listed([one.kit for one in intake.kit]) or "no kit"


def _avoided(one: Avoidance) -> str:
    what = one.action or one.pattern or ""
    if one.exercise:
        known = one.exercise in catalogue.ids()
        what = catalogue.exercise(one.exercise).name if known else one.exercise
    return f"{what} ({', '.join(filter(None, (one.reason, one.note)))})"


def _known(one: KnownLoad, intake: Intake) -> str:
    known = one.exercise in catalogue.ids()
    name = catalogue.exercise(one.exercise).name if known else one.exercise
    return (
        f"{name} {load_words(one.load_kg, intake.unit)} × {one.reps} with {number(one.rir)} in "
        "reserve"
    )
