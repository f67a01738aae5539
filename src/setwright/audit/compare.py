"""Two plans beside each other: what each costs, what each gives, what is surely different."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from setwright.anatomy.atlas import parts
from setwright.audit.audit import AuditReport, audit
from setwright.audit.context import Context
from setwright.audit.criteria.spine import spinal_sets
from setwright.audit.remark import Remark
from setwright.plan.intake import Intake
from setwright.plan.week import Plan
from setwright.response.growth import HIGH, LOW, doses_of
from setwright.response.paired import paired_growth
from setwright.response.person import person_of
from setwright.response.targets import priority_weights

DRAWS = 400
# A difference that would be written as 0.00 percent a week is none.
LEAST_GROWTH = 0.005


@dataclass(frozen=True)
class Difference:
    """A figure of the second plan less that of the first.

    Attributes:
        first: figure of the first plan.
        second: figure of the second plan.
        median: of the difference.
        low: lower end of the difference's 80 % interval.
        high: upper end.
        differs: whether the interval leaves out zero; otherwise there is no difference to speak of.
    """

    first: float
    second: float
    median: float
    low: float
    high: float
    differs: bool


@dataclass(frozen=True)
class PartDifference:
    """Dose and growth of one part under both plans.

    Attributes:
        part: id.
        sets: fractional sets a week under the first and the second plan.
        growth: percent a week.
    """

    part: str
    sets: tuple[float, float]
    growth: Difference


@dataclass(frozen=True)
class WeekFigures:
    """What one plan asks for.

    Attributes:
        title: of the plan.
        sessions: sessions a week.
        minutes: minutes a week as rehearsed.
        minutes_low: lower end of the 80 % interval, all sessions together.
        minutes_high: upper end.
        session_minutes: minutes of each session.
        sets: working sets a week.
        spinal_sets: working sets weighted by spinal load, a week.
        spinal_worst: the same in the session with the most.
        patterns: movement patterns in the week, in order.
        exercises: exercises in the week, in order.
        holds: remarks that hold.
        close: remarks that are close.
        misses: remarks that miss.
    """

    title: str
    sessions: int
    minutes: float
    minutes_low: float
    minutes_high: float
    session_minutes: tuple[float, ...]
    sets: int
    spinal_sets: float
    spinal_worst: float
    patterns: tuple[str, ...]
    exercises: tuple[str, ...]
    holds: int
    close: int
    misses: int


@dataclass(frozen=True)
class RemarkPair:
    """What the audit says of one subject under both plans; None where it says nothing."""

    criterion: str
    subject: str
    first: Remark | None
    second: Remark | None


@dataclass(frozen=True)
class Comparison:
    """Two plans beside each other.

    Attributes:
        first: figures of the first plan.
        second: figures of the second.
        growth: growth of the whole person, parts weighted by the aims, percent a week.
        parts: every part that either plan trains, in the order of the atlas.
        remarks: where the audit's verdicts differ.
    """

    first: WeekFigures
    second: WeekFigures
    growth: Difference
    parts: tuple[PartDifference, ...]
    remarks: tuple[RemarkPair, ...]


def compare(first: Plan, second: Plan, intake: Intake | None = None) -> Comparison:
    """Rehearse and audit two plans and hold them against each other.

    Args:
        first: a week.
        second: another week for the same person.
        intake: the person's aims and limits; an intermediate adult without aims when absent.
    """
    reports = audit(first, intake), audit(second, intake)
    person = person_of(intake)
    contexts = [
        Context(
            plan,
            intake,
            report.rehearsal,
            doses_of(plan, report.rehearsal),
            report.response,
            person,
        )
        for plan, report in zip((first, second), reports, strict=True)
    ]
    seed = intake.seed if intake else 1
    ours, theirs = paired_growth([one.doses for one in contexts], person, DRAWS, seed)
    weights = priority_weights(intake)
    found = []
    for at, part in enumerate(parts()):
        sets = (
            float(reports[0].response.weekly_sets[at]),
            float(reports[1].response.weekly_sets[at]),
        )
        if max(sets) > 0:
            found.append(PartDifference(part.id, sets, _difference(ours[:, at], theirs[:, at])))
    return Comparison(
        _figures(contexts[0], reports[0]),
        _figures(contexts[1], reports[1]),
        _difference(ours @ weights, theirs @ weights),
        tuple(found),
        tuple(_remarks(reports[0].remarks, reports[1].remarks)),
    )


def _difference(first: NDArray[np.floating], second: NDArray[np.floating]) -> Difference:
    """The difference over paired draws, each of shape (draws,)."""
    low, median, high = np.quantile(second - first, (LOW, 0.5, HIGH))
    differs = bool((low > 0 or high < 0) and abs(median) >= LEAST_GROWTH)
    return Difference(
        float(np.median(first)), float(np.median(second)), float(median), float(low), float(high),
        differs,
    )  # fmt: skip


def _figures(context: Context, report: AuditReport) -> WeekFigures:
    plan, lived = context.plan, report.rehearsal.sessions
    spine = [spinal_sets(context, number) for number in range(len(plan.sessions))]
    return WeekFigures(
        title=plan.title,
        sessions=len(plan.sessions),
        minutes=sum(one.total_s for one in lived) / 60,
        minutes_low=sum(one.low_s for one in lived) / 60,
        minutes_high=sum(one.high_s for one in lived) / 60,
        session_minutes=tuple(one.total_s / 60 for one in lived),
        sets=sum(item.entry.sets for item in context.placed),
        spinal_sets=sum(spine),
        spinal_worst=max(spine),
        patterns=tuple(dict.fromkeys(item.exercise.pattern for item in context.placed)),
        exercises=tuple(dict.fromkeys(item.exercise.id for item in context.placed)),
        holds=report.count("holds"),
        close=report.count("close"),
        misses=report.count("misses"),
    )


def _remarks(first: Iterable[Remark], second: Iterable[Remark]) -> Iterable[RemarkPair]:
    """Where one plan holds and the other does not, or is worse."""
    ours = {(one.criterion, one.subject): one for one in first}
    theirs = {(one.criterion, one.subject): one for one in second}
    for key in dict.fromkeys((*ours, *theirs)):
        left, right = ours.get(key), theirs.get(key)
        verdicts = {one.verdict for one in (left, right) if one is not None}
        if verdicts != {"holds"} and (left is None or right is None or len(verdicts) > 1):
            yield RemarkPair(*key, left, right)
