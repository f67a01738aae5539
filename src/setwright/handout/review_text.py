"""The week in review on one screen, as a coach reads it: facts first, then what to decide."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.handout.proposal_text import proposal_lines
from setwright.handout.review_words import (
    change_words,
    effort_words,
    exercise_name,
    kept_words,
    left_out_words,
    odd_words,
    pain_words,
    part_sentences,
    stall_words,
    strength_words,
    twice_words,
)
from setwright.handout.wording import folded
from setwright.training.facts.attendance import SessionDone
from setwright.training.facts.week import Facts
from setwright.training.review import Review

WIDTH = 100
NAME = 34
# Rows of a kind; what is beyond is counted.
MOST = 5


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
    blocks.append(
        [*_row("Effort", effort_words(facts)), *_pain(facts), *_odd(facts), *_twice(facts)]
    )
    blocks.append(_proposals(found))
    return "\n\n".join("\n".join(block) for block in blocks if block)


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
    kept, left_out = kept_words(facts), left_out_words(facts)
    lines += _row("Kept to", kept) if kept else []
    lines += _row("Left out", left_out) if left_out else []
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


def _strength(facts: Facts) -> list[str]:
    lines = folded(strength_words(facts), WIDTH - 10).splitlines()
    moved = [*facts.fell, *facts.rose]
    for one in moved[:MOST]:
        lines.append(f"{exercise_name(one.exercise)[: NAME - 2]:<{NAME}}{change_words(one)}")
    if len(moved) > MOST:
        lines.append(f"and {len(moved) - MOST} more, less")
    lines += folded(stall_words(facts), WIDTH - 10).splitlines()
    return _beside("Strength", lines)


def _beside(head: str, lines: Sequence[str]) -> list[str]:
    return [f"{head if at == 0 else '':<10}{line}" for at, line in enumerate(lines)]


def _parts(facts: Facts) -> list[str]:
    sentences = part_sentences(facts)
    text = [piece for line in sentences for piece in folded(line, WIDTH - 10).splitlines()]
    return _beside("Parts", text)


def _pain(facts: Facts) -> list[str]:
    if facts.symptoms:
        return _row("Pain", f"STOP: {' and '.join(facts.symptoms)} was reported; see 1.")
    return _row("Pain", pain_words(facts))


def _odd(facts: Facts) -> list[str]:
    words = odd_words(facts)
    return _row("Odd", words) if words else []


def _twice(facts: Facts) -> list[str]:
    words = twice_words(facts)
    return _row("Twice", words) if words else []


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
