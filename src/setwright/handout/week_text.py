"""The printed week: each session a table a lifter can train from."""

from __future__ import annotations

from setwright.exercises import catalogue
from setwright.handout.cautions import cautions_text
from setwright.handout.timeline import Block, blocks
from setwright.handout.wording import (
    counted,
    first_load,
    heading,
    rest_words,
    rir_words,
    sets_of,
    span,
    tempo_words,
)
from setwright.plan.intake import Intake
from setwright.plan.week import Plan, Session
from setwright.rehearsal.model import Rehearsal, RehearsedSession

WIDTH = 96
NAME = 30
HEAD = (
    f"  {'':<3}  {'exercise':<{NAME}} {'sets x reps':<12} {'RIR':<7} {'rest':<10} "
    f"{'load':<11} {'tempo':<9} {'min':>3}"
)
LEGEND = (
    "RIR: repetitions in reserve, first set > last set. rest: between sets of the same exercise.",
    "load: of the first set; a hand for dumbbells. tempo: seconds lowering/stretched/lifting/top,",
    "blank is a controlled pace of its own. A letter joins exercises that are alternated.",
)
PARTIALS = {
    "after the last set": "lengthened partials after the last full repetition of the last set",
    "whole sets": "every repetition a lengthened partial",
}


def week_text(plan: Plan, rehearsal: Rehearsal, intake: Intake | None = None) -> str:
    """The week on paper, at most 96 columns wide.

    Args:
        plan: the week.
        rehearsal: the same week, rehearsed; it gives the minutes and the loads.
        intake: the person, whose own cautions then stand first at the end.
    """
    together = sum(lived.total_s for lived in rehearsal.sessions) / 60
    exercises = sum(len(session.exercises) for session in plan.sessions)
    totals = (
        f"{counted(len(plan.sessions), 'session')}, {counted(exercises, 'exercise')}, "
        f"{counted(sets_of(plan), 'working set')}, {together:.0f} min"
    )
    whose = f"for {plan.person}: " if plan.person else ""
    sessions = [
        session_text(plan, session, lived)
        for session, lived in zip(plan.sessions, rehearsal.sessions, strict=True)
    ]
    top = "\n".join([plan.title, "=" * min(len(plan.title), WIDTH), f"{whose}{totals}"])
    return "\n\n".join([top, *sessions, "\n".join(LEGEND), cautions_text(intake)])


def session_text(plan: Plan, session: Session, lived: RehearsedSession) -> str:
    """One session as a table."""
    limit = "" if session.minutes is None else f" of {session.minutes}"
    minutes = (
        f"{lived.total_s / 60:.0f} min{limit} "
        f"(80 % interval {lived.low_s / 60:.0f} to {lived.high_s / 60:.0f})"
    )
    title = heading(session)
    lines = [f"{title}{minutes:>{max(WIDTH - len(title), len(minutes) + 2)}}", "-" * WIDTH, HEAD]
    done = blocks(session, lived)
    order = 0
    for block in done:
        for place, lane in enumerate(block.lanes):
            order += 1
            lines += _row(plan, session, lived, lane.position, order, block, place == 0)
    return "\n".join(line.rstrip() for line in lines)


def _row(
    plan: Plan,
    session: Session,
    lived: RehearsedSession,
    position: int,
    order: int,
    block: Block,
    opens: bool,
) -> list[str]:
    entry = session.exercises[position]
    name = catalogue.exercise(entry.exercise).name
    sides = " a side" if catalogue.exercise(entry.exercise).sides == "one" else ""
    sets = f"{entry.sets} x {span(*entry.reps)}"
    minutes = f"{block.minutes:.0f}" if opens else '"'
    lines = [
        f"  {f'{order}{entry.superset or str()}':<3}  {name[:NAME]:<{NAME}} {sets:<12} "
        f"{rir_words(entry):<7} {rest_words(entry.rest_s):<10} "
        f"{first_load(lived, position, plan):<11} {tempo_words(entry.tempo):<9} {minutes:>3}"
    ]
    extras = [
        f"{span(*entry.reps)} repetitions{sides}" if sides else "",
        PARTIALS[entry.partials] if entry.partials else "",
        entry.note,
    ]
    lines += [f"{'':<7}{extra}" for extra in extras if extra]
    return lines
