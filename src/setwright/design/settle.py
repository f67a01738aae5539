"""From the model's sets to sessions that fit their minutes on the rehearsal's clock."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

import numpy as np
from numpy.typing import NDArray

from setwright.audit.criteria.performance_kept import LEAST_KEPT
from setwright.audit.criteria.rep_range import FEWEST
from setwright.audit.criteria.rest import LONGEST_S
from setwright.design.keeping import gathered
from setwright.design.pairs import pair
from setwright.design.problem import Problem, ordered_days
from setwright.exercises import catalogue
from setwright.plan.intake import Intake
from setwright.plan.week import Entry, Plan, Session
from setwright.rehearsal.rehearse import rehearse
from setwright.response.growth import central_growth, doses_of

MOST_PAIRS = 3
# Weighted growth, relative, that a change of order must gain to be made.
WORTH_MOVING = 1e-3
# Rests grow in these steps where repetitions fall too far.
LONGER_S, LONGER_TRIES = 30, 3


def worth(plan: Plan, intake: Intake | None, problem: Problem) -> float:
    """Weighted growth of a week, percent a week."""
    doses = doses_of(plan, rehearse(plan, intake))
    grown = central_growth(doses, problem.person, len(plan.sessions))
    return round(float(problem.weights @ grown), 12)


def _first(entry: Entry, problem: Problem) -> tuple[bool, float]:
    """Sort key: compounds first, and among them what serves the aims and taxes most."""
    exercise = catalogue.exercise(entry.exercise)
    shares = catalogue.shares()[catalogue.row(entry.exercise)]
    return exercise.kind == "isolation", round(
        -float(shares @ problem.weights) - exercise.whole_body, 12
    )


def _session(name: str, day: object, minutes: int, entries: Sequence[Entry]) -> Session:
    return Session.model_validate(
        {"name": name, "day": day, "minutes": minutes, "exercises": tuple(entries)}
    )


def _name(entries: Sequence[Entry]) -> str:
    """A session's name from the halves of the body it trains."""
    upper = ("press", "pull", "fly", "raise", "elbow", "shrug", "dip", "shoulder")
    patterns = [catalogue.exercise(entry.exercise).pattern for entry in entries]
    high = sum(
        entry.sets * any(word in pattern and pattern != "calf raise" for word in upper)
        for entry, pattern in zip(entries, patterns, strict=True)
    )
    share = high / sum(entry.sets for entry in entries)
    if share > 0.75:
        return "Upper body"
    return "Lower body" if share < 0.25 else "Full body"


def sessions_of(sets: NDArray[np.int64], problem: Problem, intake: Intake) -> tuple[Session, ...]:
    """Ordered sessions with the model's sets; days without work are left out."""
    found = []
    for d, day in enumerate(ordered_days(intake)):
        entries = [
            problem.options[o].entry.model_copy(update={"sets": int(sets[o, d])})
            for o in np.flatnonzero(sets[:, d])
        ]
        if entries:
            entries.sort(key=lambda entry: _first(entry, problem))
            name = problem.kept.names.get(day.day) or _name(entries)
            found.append(_session(name, day.day, day.minutes, gathered(entries)))
    return tuple(found)


def _alone(session: Session) -> Plan:
    return Plan(setwright="plan/1", title="one session", sessions=(session,))


def seconds_of(session: Session, intake: Intake) -> float:
    """Length of a session on the rehearsal's clock."""
    return rehearse(_alone(session), intake).sessions[0].total_s


def _with(session: Session, entries: Sequence[Entry]) -> Session:
    return session.model_copy(update={"exercises": tuple(entries)})


def reorder(session: Session, intake: Intake, problem: Problem) -> Session:
    """Exchange neighbours while that gains growth on the rehearsal; compounds stay in front.

    Supersets that are kept stay whole.
    """
    best, value = session, worth(_alone(session), intake, problem)
    for position in range(len(session.exercises) - 1):
        entries = list(best.exercises)
        one, other = entries[position], entries[position + 1]
        if catalogue.exercise(one.exercise).kind != catalogue.exercise(other.exercise).kind:
            continue
        if one.superset or other.superset:
            continue
        entries[position], entries[position + 1] = other, one
        tried = _with(session, entries)
        gained = worth(_alone(tried), intake, problem)
        if gained > value * (1 + WORTH_MOVING):
            best, value = tried, gained
    return best


def hold(session: Session, intake: Intake, problem: Problem) -> Session:
    """Lengthen rests until repetitions hold from set to set, within what the audit accepts."""
    for _ in range(LONGER_TRIES):
        lived = rehearse(_alone(session), intake).sessions[0]
        entries = list(session.exercises)
        short = False
        for position, entry in enumerate(entries):
            if problem.kept.stays(session.day, entry):
                continue
            able = [one.possible for one in lived.sets if one.entry == position]
            kept = min(able) / max(able[0], 1.0)
            if len(able) > 1 and (kept < LEAST_KEPT or min(able) < entry.reps[0]):
                rest = (entry.rest_s[0] + LONGER_S, entry.rest_s[1] + LONGER_S)
                if rest[1] <= LONGEST_S:
                    entries[position] = entry.model_copy(update={"rest_s": rest})
                    short = True
        if not short:
            return session
        session = _with(session, entries)
    return session


def honest_bands(session: Session, intake: Intake, problem: Problem) -> Session:
    """Write no repetitions that cannot be done.

    The band's low end gives way within reason, then the sets that still fall short of it are left
    out, down to one. Fewer sets come nearer to failure, so this is looked at anew until it holds.
    """
    while True:
        honest = _with_honest_bands(session, intake, problem)
        if honest == session:
            return session
        session = honest


def _with_honest_bands(session: Session, intake: Intake, problem: Problem) -> Session:
    lived = rehearse(_alone(session), intake).sessions[0]
    entries = []
    for position, entry in enumerate(session.exercises):
        if problem.kept.stays(session.day, entry):
            entries.append(entry)
            continue
        able = [one.possible for one in lived.sets if one.entry == position]
        least = catalogue.exercise(entry.exercise).rep_band[0]
        low = min(entry.reps[0], max(int(min(able)), least, FEWEST))
        sets = max(sum(one >= low for one in able), 1)
        entries.append(entry.model_copy(update={"sets": sets, "reps": (low, entry.reps[1])}))
    return _with(session, entries)


def shorten(session: Session, intake: Intake, problem: Problem) -> Session:
    """Drop the sets that cost least growth until the session fits its minutes.

    A whole exercise goes only when no other can spare a set: it may be all that trains a part.
    """
    limit = 60.0 * (session.minutes or 0)
    while seconds_of(session, intake) > limit and len(session.exercises) > 0:
        trials = []
        for position, entry in enumerate(session.exercises):
            if problem.kept.stays(session.day, entry):
                continue
            entries = list(session.exercises)
            if entry.sets > problem.least_sets:
                entries[position] = entry.model_copy(update={"sets": entry.sets - 1})
            elif len(entries) > 1:
                entries.pop(position)
            else:
                return session
            tried = _with(session, _unpaired(entries))
            spared = len(entries) == len(session.exercises)
            trials.append((spared, worth(_alone(tried), intake, problem), -position, tried))
        if not trials:
            return session
        session = max(trials, key=lambda row: row[:3])[3]
    return session


def _unpaired(entries: Sequence[Entry]) -> list[Entry]:
    """A superset whose partner has gone is an ordinary exercise again."""
    letters = [entry.superset for entry in entries]
    return [
        entry.model_copy(update={"superset": None})
        if entry.superset and letters.count(entry.superset) < 2
        else entry
        for entry in entries
    ]


def fill(plan: Plan, intake: Intake, problem: Problem) -> Plan:
    """Add sets where minutes are left, the most weighted growth a second first."""
    plan_now = plan
    for number, session in enumerate(plan.sessions):
        limit = 60.0 * (session.minutes or 0)
        now = session
        for _ in range(8):
            base = worth(_replace(plan_now, number, now), intake, problem)
            best: tuple[float, Session] | None = None
            length = seconds_of(now, intake)
            for position, entry in enumerate(now.exercises):
                if entry.sets >= problem.most_sets or problem.kept.stays(now.day, entry):
                    continue
                entries = list(now.exercises)
                entries[position] = entry.model_copy(update={"sets": entry.sets + 1})
                tried = _with(now, entries)
                longer = seconds_of(tried, intake)
                whole = _replace(plan_now, number, tried)
                if longer > limit or not within(whole, number, problem):
                    continue
                rate = (worth(whole, intake, problem) - base) / max(longer - length, 1.0)
                if rate > 0 and (best is None or rate > best[0]):
                    best = (rate, tried)
            if best is None:
                break
            now = best[1]
        plan_now = _replace(plan_now, number, now)
    return plan_now


def _replace(plan: Plan, number: int, session: Session) -> Plan:
    sessions = list(plan.sessions)
    sessions[number] = session
    return plan.model_copy(update={"sessions": tuple(sessions)})


def within(plan: Plan, number: int, problem: Problem) -> bool:
    """Whether a session still keeps the limits of parts and spine."""
    rows = catalogue.shares()
    by_session = np.array(
        [
            sum(entry.sets * rows[catalogue.row(entry.exercise)] for entry in session.exercises)
            for session in plan.sessions
        ]
    )
    spine = sum(
        entry.sets * catalogue.profile(entry.exercise).spinal_load
        for entry in plan.sessions[number].exercises
    )
    return bool(
        by_session[number].max() <= problem.session_most
        and np.all(by_session.sum(axis=0) <= problem.most + 1e-9)
        and spine <= problem.spine_session
    )


def settle(sets: NDArray[np.int64], problem: Problem, intake: Intake) -> tuple[Session, ...]:
    """Order, pair and fit every session; then use the minutes that pairing freed."""
    settled = []
    for session in sessions_of(sets, problem, intake):
        ordered = reorder(session, intake, problem)
        paired = _with(
            ordered, pair(ordered.exercises, MOST_PAIRS, partial(problem.kept.stays, session.day))
        )
        # A pair that saves no time is not worth the crowd at two stations.
        shorter = seconds_of(paired, intake) < seconds_of(ordered, intake)
        held = hold(paired if shorter else ordered, intake, problem)
        settled.append(shorten(held, intake, problem))
    plan = Plan(setwright="plan/1", title="week", sessions=tuple(settled))
    filled = fill(plan, intake, problem)
    return tuple(honest_bands(session, intake, problem) for session in filled.sessions)
