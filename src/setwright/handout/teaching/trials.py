"""What the week would be with something changed: real runs, each in the same imagined people."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from setwright.audit.context import Context
from setwright.design.pairs import pair
from setwright.plan.week import Entry, Plan, Session
from setwright.rehearsal.rehearse import rehearse
from setwright.response.growth import HIGH, LOW, doses_of
from setwright.response.paired import paired_growth
from setwright.response.targets import priority_weights

DRAWS = 200
MOST_REST_S = 900
RESTS = (0.5, 0.75, 1.25, 1.5)
MORE_RIR = 2.0
MOST_PAIRS = 8


@dataclass(frozen=True)
class Trial:
    """A changed week against the week as it stands.

    Attributes:
        name: what was changed.
        minutes: change of the week's rehearsed minutes.
        growth: change of the week's growth, parts weighted by the aims, as a part of the growth
            of the same imagined person on the week as it stands; median over people.
        low: lower end of the 80 % interval of that change.
        high: upper end.
    """

    name: str
    minutes: float
    growth: float
    low: float
    high: float


def run(context: Context, changed: Sequence[tuple[str, Plan]]) -> tuple[Trial, ...]:
    """Rehearse changed weeks and hold each against the week as it stands.

    Args:
        context: the week.
        changed: name and plan of each changed week.
    """
    if not changed:
        return ()
    lived = [rehearse(plan, context.intake) for _, plan in changed]
    doses = [doses_of(plan, one) for (_, plan), one in zip(changed, lived, strict=True)]
    seed = context.intake.seed if context.intake else 1
    grown = paired_growth([context.doses, *doses], context.person, DRAWS, seed)
    weights = priority_weights(context.intake)
    now = np.maximum(grown[0] @ weights, 1e-9)
    minutes = sum(one.total_s for one in context.rehearsal.sessions) / 60
    found = []
    for (name, _), one, growth in zip(changed, lived, grown[1:], strict=True):
        low, median, high = np.quantile(growth @ weights / now - 1.0, (LOW, 0.5, HIGH))
        after = sum(session.total_s for session in one.sessions) / 60
        found.append(Trial(name, after - minutes, float(median), float(low), float(high)))
    return tuple(found)


def without_each(context: Context) -> tuple[Trial, ...]:
    """The week without one exercise, for each exercise in the plan's order.

    An exercise that is a plan's only one cannot go.
    """
    changed = []
    for item in context.placed:
        sessions = []
        for number, session in enumerate(context.plan.sessions):
            entries = tuple(
                entry
                for position, entry in enumerate(session.exercises)
                if (number, position) != (item.session, item.position)
            )
            if entries:
                sessions.append(session.model_copy(update={"exercises": entries}))
        if sessions:
            plan = context.plan.model_copy(update={"sessions": tuple(sessions)})
            changed.append((context.subject(item), plan))
    return run(context, changed)


def whole_week(context: Context) -> tuple[Trial, ...]:
    """The week with one rule changed everywhere: sets, rests, effort, pairs."""
    plan = context.plan
    changed = [
        ("a set fewer everywhere", _each(plan, lambda one: _sets(one, -1))),
        ("a set more everywhere", _each(plan, lambda one: _sets(one, 1))),
        *(
            (f"rests times {scale:g}", _each(plan, lambda one, by=scale: _rest(one, by)))  # type: ignore[misc]
            for scale in RESTS
        ),
        (f"{MORE_RIR:g} repetitions more in reserve", _each(plan, _easier)),
    ]
    if any(entry.superset for session in plan.sessions for entry in session.exercises):
        changed.append(("nothing alternated", _each(plan, _alone)))
    paired = _paired(_each(plan, _alone))
    if paired != plan:
        changed.append(("alternated wherever nothing is shared", paired))
    return run(context, [(name, one) for name, one in changed if one != plan])


def _each(plan: Plan, change: Callable[[Entry], Entry]) -> Plan:
    return _sessions(plan, lambda entries: tuple(change(one) for one in entries))


def _sessions(plan: Plan, change: Callable[[tuple[Entry, ...]], tuple[Entry, ...]]) -> Plan:
    def changed(session: Session) -> Session:
        return session.model_copy(update={"exercises": change(session.exercises)})

    return plan.model_copy(update={"sessions": tuple(changed(one) for one in plan.sessions)})


def _paired(plan: Plan) -> Plan:
    return _sessions(plan, lambda entries: pair(entries, MOST_PAIRS))


def _sets(entry: Entry, more: int) -> Entry:
    return entry.model_copy(update={"sets": min(max(entry.sets + more, 1), 20)})


def _rest(entry: Entry, scale: float) -> Entry:
    low, high = (min(round(one * scale), MOST_REST_S) for one in entry.rest_s)
    return entry.model_copy(update={"rest_s": (low, high)})


def _easier(entry: Entry) -> Entry:
    first, last = (min(one + MORE_RIR, 10.0) for one in entry.rir)
    return entry.model_copy(update={"rir": (first, last)})


def _alone(entry: Entry) -> Entry:
    return entry.model_copy(update={"superset": None})
