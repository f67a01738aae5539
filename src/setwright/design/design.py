"""Intake to plan: options, model, settling, audit, and what binds."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from setwright.audit.audit import AuditReport
from setwright.design.alternatives import Alternative, alternatives
from setwright.design.binding import declare
from setwright.design.contradictions import check_wishes
from setwright.design.model import Solved, solve
from setwright.design.problem import Problem, ordered_days, problem_of
from setwright.design.settle import fill, seconds_of, settle, worth
from setwright.documents.errors import DocumentError, Fault
from setwright.plan.intake import Day, Intake
from setwright.plan.week import Entry, Plan, Session
from setwright.rehearsal.rehearse import rehearse

# Parts of the time for the two searches, in the solver's deterministic seconds, of which one takes
# about two on a laptop's clock; the rest settles, prices ten more minutes and audits.
FIRST_SHARE, SECOND_SHARE = 0.08, 0.26
MORE_MINUTES = 10
# Supersets are trusted to save no more than this (finding super-8-weeks: 36 % of the time).
MOST_SAVED = 1.45


@dataclass(frozen=True)
class DesignReport:
    """How good the week is and what holds it back.

    Attributes:
        gap: how far from the optimum of the constraint model the week can be at most, 0 to 1.
        proven: whether the model's optimum was proved.
        growth: weighted growth of the settled week, percent a week.
        options: exercises searched, after those that others replace were left out.
        binds: limits that hold the week back, in plain words.
        more_minutes_gain: weighted growth that ten more minutes a day would add, in parts of the
            growth now, by the model; at least this much.
        alternatives: substitutes for one exercise that make nearly the same week, best first.
        seconds: time the design took.
    """

    gap: float
    proven: bool
    growth: float
    options: int
    binds: tuple[str, ...]
    more_minutes_gain: float
    alternatives: tuple[Alternative, ...]
    seconds: float


@dataclass(frozen=True)
class Design:
    """A plan, the audit it passed, and the report."""

    plan: Plan
    report: DesignReport
    audit: AuditReport


def design(
    intake: Intake,
    seconds: float = 10.0,
    progress: Callable[[str], None] | None = None,
    keep: Plan | None = None,
) -> Design:
    """Design the best week under a person's limits.

    Args:
        intake: aims and limits.
        seconds: time for the whole design.
        progress: told what is being done, in words.
        keep: exercises that stay on their days as they are prescribed. They come before every
            limit; the rest keeps what is left of them.

    Returns:
        Same intake and seconds, same plan.

    Raises:
        DocumentError: when nothing can be trained under the limits, or something is kept on a day
            that is not trained.
    """
    started = time.perf_counter()
    say = progress or (lambda words: None)
    check_wishes(intake)
    problem = problem_of(intake, keep)
    if not problem.options:
        raise _impossible(
            "no exercise", "kit, avoidances and aims that leave at least one exercise"
        )
    say(f"searching {len(problem.options)} exercises over {len(problem.minutes)} days")
    solved = solve(problem, seconds * FIRST_SHARE)
    if not solved.sets.any():
        raise _impossible("no session that fits", "more minutes on at least one day")
    say("settling order, pairs and minutes")
    sessions = settle(solved.sets, problem, intake)
    problem = replace(problem, minutes=_with_pairs(sessions, problem, intake))
    say("searching again with the minutes that supersets free")
    solved = solve(problem, seconds * SECOND_SHARE)
    say("settling again")
    sessions = settle(solved.sets, problem, intake)
    plan = _plan(intake, sessions, problem)
    say("pricing ten more minutes")
    gain = _more(plan, intake, problem)
    say("auditing")
    plan, report = declare(plan, intake)
    return Design(
        plan,
        DesignReport(
            solved.gap,
            solved.proven,
            worth(plan, intake, problem),
            len(problem.options),
            _binds(plan, problem, solved, gain),
            gain,
            alternatives(plan, intake, problem),
            time.perf_counter() - started,
        ),
        report,
    )


def _with_pairs(
    sessions: tuple[Session, ...], problem: Problem, intake: Intake
) -> NDArray[np.float64]:
    """Minutes of straight sets that fit each day once supersets save their part."""
    minutes = problem.minutes.copy()
    for d, day in enumerate(ordered_days(intake)):
        for session in sessions:
            if session.day == day.day:
                straight = session.model_copy(
                    update={
                        "exercises": tuple(
                            _prescribed(session.day, entry, problem) for entry in session.exercises
                        )
                    }
                )
                saved = seconds_of(straight, intake) / seconds_of(session, intake)
                minutes[d] *= min(max(saved, 1.0), MOST_SAVED)
    return minutes


def _prescribed(day: Day, entry: Entry, problem: Problem) -> Entry:
    """The entry as straight sets, with the rest of its prescription."""
    if problem.kept.stays(day, entry):
        return entry.model_copy(update={"superset": None})
    own = next(o.entry for o in problem.options if o.exercise.id == entry.exercise)
    return entry.model_copy(update={"superset": None, "rest_s": own.rest_s})


def _impossible(found: str, allowed: str) -> DocumentError:
    return DocumentError("intake", (Fault("", found, allowed),))


def _plan(intake: Intake, sessions: tuple[Session, ...], problem: Problem) -> Plan:
    """The week with the loads the rehearsal chose, but for what is kept."""
    plan = Plan.model_validate(
        {
            "setwright": "plan/1",
            "title": f"A week for {intake.name}",
            "person": intake.name,
            "unit": intake.unit,
            "sessions": sessions,
        }
    )
    rehearsal = rehearse(plan, intake)
    loaded = []
    for session, lived in zip(plan.sessions, rehearsal.sessions, strict=True):
        loads = {one.entry: one.load_kg for one in lived.sets if one.number == 1}
        entries = tuple(
            entry
            if problem.kept.stays(session.day, entry)
            else entry.model_copy(update={"load_kg": loads.get(position)})
            for position, entry in enumerate(session.exercises)
        )
        loaded.append(session.model_copy(update={"exercises": entries}))
    return plan.model_copy(update={"sessions": tuple(loaded)})


def _more(plan: Plan, intake: Intake, problem: Problem) -> float:
    """What ten more minutes a day add at least, relative: the same exercises with more sets."""
    longer = tuple(
        session.model_copy(update={"minutes": (session.minutes or 0) + MORE_MINUTES})
        for session in plan.sessions
    )
    free = replace(problem, most_sets=problem.most_sets + 1)
    filled = fill(plan.model_copy(update={"sessions": longer}), intake, free)
    now = worth(plan, intake, problem)
    return max(worth(filled, intake, problem) - now, 0.0) / max(now, 1e-9)


def _binds(plan: Plan, problem: Problem, solved: Solved, gain: float) -> tuple[str, ...]:
    """The limits that hold the week back."""
    found = []
    minutes = problem.minutes
    used = np.array(
        [
            sum(
                option.fixed_s * (solved.sets[o, d] > 0) + option.per_set_s * solved.sets[o, d]
                for o, option in enumerate(problem.options)
            )
            / 60
            for d in range(len(minutes))
        ]
    )
    tight = int((used > minutes - 3.0).sum())
    if tight:
        found.append(
            f"minutes: {tight} of {len(minutes)} days are full; ten more minutes a day would add "
            f"at least {100 * gain:.0f} % of the weighted growth"
        )
    spine = [
        sum(option.spine * solved.sets[o, d] for o, option in enumerate(problem.options))
        for d in range(len(minutes))
    ]
    if max(spine) > 0.9 * problem.spine_session:
        found.append("spinal load: the fullest day is at its limit")
    for item in plan.unavoidable:
        found.append(f"{item.subject} ({item.criterion}): {item.because}")
    return tuple(found)
