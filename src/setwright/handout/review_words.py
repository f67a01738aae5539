"""What a week shows, as sentences: for the printed review and the coach's page alike."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date

from setwright.anatomy.atlas import part
from setwright.documents.units import Unit, load_words
from setwright.exercises import catalogue
from setwright.handout.wording import counted, number
from setwright.training.effort import SPOKEN_BIAS
from setwright.training.facts.dose import NEAR_SETS, PartDose
from setwright.training.facts.strength import Change
from setwright.training.facts.week import Facts

MOST_PARTS = 6


def exercise_name(name: str) -> str:
    """Its name in the catalogue, or as logged."""
    return catalogue.exercise(name).name if name in catalogue.ids() else name


def kept_words(facts: Facts) -> str:
    """How well the plan was kept to over the last weeks; empty when nothing was planned."""
    planned = sum(week.planned_sets for week in facts.kept)
    done = sum(week.done_sets for week in facts.kept)
    if not planned:
        return ""
    weeks = ", ".join(
        f"{week.done_sets / week.planned_sets:.0%}" for week in facts.kept if week.planned_sets
    )
    sessions = sum(week.done_sessions for week in facts.kept)
    of = sum(week.planned_sessions for week in facts.kept)
    text = f"{done / planned:.0%} of the sets planned, {sessions} of {of} sessions"
    if len(facts.kept) > 1:
        text += f" in {len(facts.kept)} weeks (sets week by week: {weeks})"
    return text + "."


def left_out_words(facts: Facts) -> str:
    """Exercises skipped, replaced, tried in vain or left out without a word; empty when none."""
    unit: Unit = facts.plan.unit if facts.plan is not None else "kg"
    rows = []
    for one in facts.left_out:
        reasons = ", ".join(one.reasons)
        by = f" for {exercise_name(one.by)}" if one.by else ""
        rows.append(f"{exercise_name(one.exercise)}{by} ({reasons})")
    for failed in facts.unable:
        load = load_words(failed.load_kg, unit)
        rows.append(f"{exercise_name(failed.exercise)} (no repetition could be done at {load})")
    if facts.unsaid:
        names = ", ".join(exercise_name(one) for one in facts.unsaid)
        rows.append(f"{names} (nothing said)")
    return "; ".join(rows) + "." if rows else ""


def strength_words(facts: Facts) -> str:
    """How many exercises rose and fell."""
    if not facts.client.done:
        return "No working set with a known load is in the log yet."
    if not facts.changes:
        return "Not enough sets yet to tell a change: it takes two weeks."
    fell, rose = facts.fell, facts.rose
    rest = len(facts.changes) - len(fell) - len(rose)
    return f"{counted(len(rose), 'exercise')} rose beyond noise, {len(fell)} fell, {rest} neither."


def stall_words(facts: Facts) -> str:
    """Exercises that stall; empty when none does."""
    stalls = [
        f"{exercise_name(one.exercise)} ({one.percent:+.1f} %, {one.outings} outings)"
        for one in facts.stalls[:3]
    ]
    return f"Stalls: {'; '.join(stalls)}." if stalls else ""


def change_words(one: Change) -> str:
    """A change of strength, and the trend with its interval."""
    trend = one.trend
    return (
        f"{one.percent:+.1f} % in {one.days} days; trend {trend.percent_a_week:+.1f} % a week "
        f"({trend.low:+.1f} to {trend.high:+.1f})"
    )


def part_sentences(facts: Facts) -> list[str]:
    """Parts under, over and within their targets, and the growth to expect."""
    under = [one for one in facts.parts if one.standing == "under"]
    over = [one for one in facts.parts if one.standing == "over"]
    low = [one for one in facts.parts if one.standing == "enough" and one.band.aim == "emphasise"]
    asked = [one for one in facts.parts if one.band.least > 0]
    fine = len(asked) - len([one for one in asked if one.standing in ("under", "over")])
    if not any(one.done for one in facts.parts):
        return ["No part had a set this week."]
    lines = [f"{fine} of {len(asked)} parts within their target of fractional sets."]
    if facts.under_way:
        lines = [f"{fine} of {len(asked)} parts within their target so far; the week goes on."]
    elif under:
        # A missed session, or the plan itself?
        own = [one for one in under if one.planned < one.band.least - NEAR_SETS]
        done = [one for one in under if one not in own]
        if done:
            lines.append("Under, as less was done than planned: " + _listed(done, True))
        if own:
            lines.append("Under, and the plan gives no more: " + _listed(own, True))
    if low and not facts.under_way:
        lines.append(
            "Emphasised, above the least but not yet a sound dose: " + _listed(low, False, 4)
        )
    if over:
        lines.append("Over: " + _listed(over, False))
    main = [one for one in facts.parts if one.band.aim == "emphasise"] or asked
    if main and not facts.under_way and any(one.growth for one in main):
        lines.append(_growth(main))
    return lines


def _listed(rows: Iterable[PartDose], least: bool, most: int = MOST_PARTS) -> str:
    rows = sorted(rows, key=lambda one: (one.done / max(one.band.good, 1e-9), one.part))
    words = [
        f"{part(one.part).name} {one.done:.1f} of "
        f"{number(one.band.least if least else one.band.good or one.band.most)}"
        for one in rows[:most]
    ]
    more = f"; {len(rows) - most} more" if len(rows) > most else ""
    return "; ".join(words) + more + "."


def _growth(rows: Sequence[PartDose]) -> str:
    """Expected growth of the parts that count most, done against planned."""

    def mean(values: Iterable[float]) -> float:
        kept = list(values)
        return sum(kept) / len(kept)

    what = "the emphasised parts" if rows[0].band.aim == "emphasise" else "these parts"
    return (
        f"Expected growth of {what}, mean: {mean(one.growth for one in rows):.2f} % a week "
        f"({mean(one.low for one in rows):.2f} to {mean(one.high for one in rows):.2f}); "
        f"the plan, done in full: {mean(one.planned_growth for one in rows):.2f} %."
    )


def effort_words(facts: Facts) -> str:
    """How honest the repetitions in reserve are that were said."""
    if not facts.honesty:
        return "Too few repetitions in reserve were said to judge their honesty."
    off = [one for one in facts.honesty if abs(one.honesty.bias) >= SPOKEN_BIAS]
    off = [one for one in off if one.honesty.low > 0 or one.honesty.high < 0]
    if not off:
        return "Repetitions in reserve are felt about right."
    words = []
    for one in off[:3]:
        low, high = sorted((abs(one.honesty.low), abs(one.honesty.high)))
        how = "earlier" if one.honesty.bias > 0 else "later"
        words.append(
            f"{one.pattern} about {abs(one.honesty.bias):.1f} repetitions {how} "
            f"({low:.1f} to {high:.1f})"
        )
    rest = len(facts.honesty) - len(words)
    more = f"; {counted(rest, 'other pattern')} less or unsure" if rest else ""
    return "Sets stop, against what is felt: " + "; ".join(words) + more + "."


def pain_words(facts: Facts) -> str:
    """Pain of the last two weeks; what stops training is said apart."""
    if not facts.pain:
        return "None reported in two weeks."
    words = []
    for one in facts.pain[:3]:
        levels = ", ".join(str(level) for level in one.levels[-4:])
        words.append(f"{exercise_name(one.exercise)}: {one.where} {levels} of 10 ({one.answer})")
    more = len(facts.pain) - len(words)
    text = "; ".join(words) + (f"; and {more} more" if more else "")
    return text + ". Nothing rises there."


def twice_words(facts: Facts) -> str:
    """Sets that were entered under one number; empty when there are none."""
    places = dict.fromkeys((one.exercise, one.at.date(), one.number) for one in facts.twice)
    if not places:
        return ""
    named = "; ".join(
        f"{exercise_name(exercise)} on {day:%a}, set {number}" for exercise, day, number in places
    )
    return f"{named}. All of them count; if it was one set, take the other back."


def odd_words(facts: Facts) -> str:
    """Entries that are hard to believe; empty when there are none."""
    if not facts.odd:
        return ""
    unit: Unit = facts.plan.unit if facts.plan is not None else "kg"
    words = []
    for one in facts.odd[:2]:
        day = date.fromordinal(one.day)
        text = (
            f"{exercise_name(one.exercise)} on {day:%a}, {load_words(one.load_kg, unit)} for "
            f"{number(one.reps)}: about {one.expected:.0f} expected"
        )
        if one.instead_kg is not None:
            text += f"; was {load_words(round(one.instead_kg, 1), unit)} meant?"
        words.append(text)
    more = len(facts.odd) - len(words)
    text = "; ".join(words) + (f"; and {more} more" if more else "")
    return text if text.endswith("?") else text + "."
