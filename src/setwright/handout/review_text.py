"""The week in review on one screen, as a coach reads it: facts first, then what to decide."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date

from setwright.anatomy.atlas import part
from setwright.documents.units import Unit, load_words
from setwright.exercises import catalogue
from setwright.handout.proposal_text import proposal_lines
from setwright.handout.wording import counted, folded, number
from setwright.training.effort import SPOKEN_BIAS
from setwright.training.facts.attendance import SessionDone
from setwright.training.facts.dose import NEAR_SETS, PartDose
from setwright.training.facts.strength import Change
from setwright.training.facts.week import Facts
from setwright.training.review import Review

WIDTH = 100
NAME = 34
# Rows of a kind; what is beyond is counted.
MOST = 5
MOST_PARTS = 6


def review_text(found: Review) -> str:
    """The review; at most about 45 lines for a usual week."""
    facts = found.facts
    place = facts.client.block.place(facts.monday.toordinal())
    week = f"week of {facts.monday.isoformat()}, week {place.week} of the block"
    title = f"{facts.intake.name}: {week}" + (", a lighter one" if place.kind == "ease" else "")
    blocks = [[title, "=" * min(len(title), WIDTH)]]
    blocks[0] += _sessions(facts)
    blocks.append(_strength(facts))
    blocks.append(_parts(facts))
    blocks.append([*_effort(facts), *_pain(facts), *_odd(facts)])
    blocks.append(_proposals(found))
    return "\n\n".join("\n".join(block) for block in blocks if block)


def exercise_name(name: str) -> str:
    """Its name in the catalogue, or as logged."""
    return catalogue.exercise(name).name if name in catalogue.ids() else name


def _row(head: str, text: str) -> list[str]:
    """A heading in the margin and a folded text beside it."""
    return folded(
        text, WIDTH, initial_indent=f"{head:<10}", subsequent_indent=" " * 10
    ).splitlines()  # fmt: skip


def _sessions(facts: Facts) -> list[str]:
    if facts.plan is None:
        return _row("Done", "No plan is in force this week, so nothing was planned.")
    lines = [f"{'Session':<{NAME}}{'planned':<10}{'done':<10}{'sets':<12}minutes"]
    lines += [_session(one, facts) for one in facts.sessions]
    planned = sum(week.planned_sets for week in facts.kept)
    done = sum(week.done_sets for week in facts.kept)
    if planned:
        weeks = ", ".join(
            f"{week.done_sets / week.planned_sets:.0%}" for week in facts.kept if week.planned_sets
        )
        sessions = sum(week.done_sessions for week in facts.kept)
        of = sum(week.planned_sessions for week in facts.kept)
        text = f"{done / planned:.0%} of the sets planned, {sessions} of {of} sessions"
        if len(facts.kept) > 1:
            text += f" in {len(facts.kept)} weeks (sets week by week: {weeks})"
        lines += _row("Kept to", text + ".")
    rows = []
    for one in facts.left_out:
        reasons = ", ".join(one.reasons)
        by = f" for {exercise_name(one.by)}" if one.by else ""
        rows.append(f"{exercise_name(one.exercise)}{by} ({reasons})")
    for failed in facts.unable:
        load = load_words(failed.load_kg, facts.plan.unit)
        rows.append(f"{exercise_name(failed.exercise)} (no repetition could be done at {load})")
    if facts.unsaid:
        names = ", ".join(exercise_name(one) for one in facts.unsaid)
        rows.append(f"{names} (nothing said)")
    if rows:
        lines += _row("Left out", "; ".join(rows) + ".")
    return lines


def _session(one: SessionDone, facts: Facts) -> str:
    planned = f"{one.planned_on:%a}"
    if one.done_on is not None:
        done = f"{one.done_on:%a}"
    elif one.planned_on > facts.day:
        done = "to come"
    else:
        done = "missed"
    sets = f"{one.done_sets} of {one.planned_sets}"
    minutes = "" if one.done_minutes is None else f"{one.done_minutes:.0f} of "
    reason = f"   ({one.reason})" if one.reason and one.done_on is None else ""
    return (
        f"{one.session:<{NAME}}{planned:<10}{done:<10}{sets:<12}"
        f"{minutes}{one.planned_minutes:.0f}{reason}"
    )


def change_words(one: Change) -> str:
    """A change of strength, and the trend with its interval."""
    trend = one.trend
    return (
        f"{one.percent:+.1f} % in {one.days} days; trend {trend.percent_a_week:+.1f} % a week "
        f"({trend.low:+.1f} to {trend.high:+.1f})"
    )


def _strength(facts: Facts) -> list[str]:
    if not facts.client.done:
        return _row("Strength", "No working set with a known load is in the log yet.")
    if not facts.changes:
        return _row("Strength", "Not enough sets yet to tell a change: it takes two weeks.")
    fell, rose = facts.fell, facts.rose
    rest = len(facts.changes) - len(fell) - len(rose)
    lines = [
        f"{counted(len(rose), 'exercise')} rose beyond noise, {len(fell)} fell, {rest} neither."
    ]
    for one in [*fell, *rose][:MOST]:
        lines.append(f"{exercise_name(one.exercise)[: NAME - 2]:<{NAME}}{change_words(one)}")
    hidden = len(fell) + len(rose) - MOST
    if hidden > 0:
        lines.append(f"and {hidden} more, less")
    stalls = [
        f"{exercise_name(one.exercise)} ({one.percent:+.1f} %, {one.outings} outings)"
        for one in facts.stalls[:3]
    ]
    if stalls:
        lines += folded("Stalls: " + "; ".join(stalls) + ".", WIDTH - 10).splitlines()
    return _beside("Strength", lines)


def _beside(head: str, lines: Sequence[str]) -> list[str]:
    return [f"{head if at == 0 else '':<10}{line}" for at, line in enumerate(lines)]


def _parts(facts: Facts) -> list[str]:
    under = [one for one in facts.parts if one.standing == "under"]
    over = [one for one in facts.parts if one.standing == "over"]
    low = [one for one in facts.parts if one.standing == "enough" and one.band.aim == "emphasise"]
    asked = [one for one in facts.parts if one.band.least > 0]
    fine = len(asked) - len([one for one in asked if one.standing in ("under", "over")])
    if not any(one.done for one in facts.parts):
        return _row("Parts", "No part had a set this week.")
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
    text = [piece for line in lines for piece in folded(line, WIDTH - 10).splitlines()]
    return _beside("Parts", text)


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


def _effort(facts: Facts) -> list[str]:
    if not facts.honesty:
        return _row("Effort", "Too few repetitions in reserve were said to judge their honesty.")
    off = [one for one in facts.honesty if abs(one.honesty.bias) >= SPOKEN_BIAS]
    off = [one for one in off if one.honesty.low > 0 or one.honesty.high < 0]
    if not off:
        return _row("Effort", "Repetitions in reserve are felt about right.")
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
    return _row("Effort", "Sets stop, against what is felt: " + "; ".join(words) + more + ".")


def _pain(facts: Facts) -> list[str]:
    if facts.symptoms:
        return _row("Pain", f"STOP: {' and '.join(facts.symptoms)} was reported; see 1.")
    if not facts.pain:
        return _row("Pain", "None reported in two weeks.")
    words = []
    for one in facts.pain[:3]:
        levels = ", ".join(str(level) for level in one.levels[-4:])
        words.append(f"{exercise_name(one.exercise)}: {one.where} {levels} of 10 ({one.answer})")
    more = len(facts.pain) - len(words)
    text = "; ".join(words) + (f"; and {more} more" if more else "")
    return _row("Pain", text + ". Nothing rises there.")


def _odd(facts: Facts) -> list[str]:
    if not facts.odd:
        return []
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
    return _row("Odd", text if text.endswith("?") else text + ".")


def _proposals(found: Review) -> list[str]:
    if not found.proposals:
        return ["Proposals: none. Go on with the plan."]
    lines = ["Proposals"]
    for place, one in enumerate(found.proposals, start=1):
        lines += proposal_lines(place, one, found.decided.get(one.id))
    open_ones = [one for one in found.proposals if one.id not in found.decided]
    if open_ones:
        line = "Decide: setwright decide {} 1 accept | decline | edit --change KEY=VALUE"
        shown = line.format(found.facts.client.folder.path)
        lines.append(shown if len(shown) <= WIDTH else line.format("FOLDER"))
    return lines
