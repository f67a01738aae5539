"""A proposal in a few lines, and what a decision did."""

from __future__ import annotations

import json

from setwright.anatomy.atlas import part
from setwright.audit.compare import Comparison, RemarkPair
from setwright.handout.remark_words import subject_words
from setwright.handout.wording import folded
from setwright.plan.decision import Decision
from setwright.training.decisions import Decided
from setwright.training.proposals.model import Expected, Proposal

WIDTH = 100
RANK = {"holds": 0, "close": 1, "misses": 2}
SHOWN = 6
LEAST_MINUTES = 0.5
CHOICE = {"accept": "accepted", "edit": "accepted with changes", "decline": "declined"}


def proposal_lines(place: int, one: Proposal, decision: Decision | None) -> list[str]:
    """A proposal: title, evidence, expected effect, what happens if declined."""
    head = f"{place:>2}. {one.title}  [{one.id}]"
    if decision is not None:
        head += f"  {CHOICE[decision.choice]}"
        if decision.because:
            head += f": {decision.because}"
        return _folded(head, "", "    ")
    lines = _folded(head, "", "    ")
    why = " ".join(one.evidence)
    effect = expected_words(one.expected)
    lines += _folded(why, "    ", "    ")
    if effect:
        lines += _folded(f"Expected: {effect}", "    ", "    ")
    lines += _folded(f"If declined: {one.if_declined}", "    ", "    ")
    return lines


def _folded(text: str, first: str, further: str) -> list[str]:
    return folded(text, WIDTH, initial_indent=first, subsequent_indent=further).splitlines()


def expected_words(one: Expected) -> str:
    """The expected effect in one sentence or two."""
    words = []
    parts = [
        f"{part(item.part).name} {item.growth.median:+.2f} % a week "
        f"({item.growth.low:+.2f} to {item.growth.high:+.2f})"
        for item in one.parts
    ]
    if parts:
        words.append("growth of " + ", ".join(parts[:2]))
    elif one.growth is not None:
        words.append("no difference in growth to speak of")
    if abs(one.minutes) >= LEAST_MINUTES:
        words.append(f"{one.minutes:+.0f} min a week")
    text = "; ".join(words)
    if text:
        text += "."
    return f"{text} {one.words}".strip()


def decided_text(done: Decided) -> str:
    """What was decided and what came of it."""
    choice = done.decision.choice
    lines = [f"{CHOICE[choice].capitalize()}: {done.decision.kind}, {done.decision.subject}."]
    if done.supersedes is not None:
        lines.append(f"It takes the place of: {CHOICE[done.supersedes.choice]}.")
    if choice == "edit":
        rows = (f"{key} = {json.dumps(value)}" for key, value in done.decision.change.items())
        lines.append("As changed: " + ", ".join(rows) + ".")
    if done.path is None or done.comparison is None:
        lines.append("No plan changed.")
        return "\n".join(lines)
    lines.append(f"Next week's plan: {done.path}")
    return "\n".join([*lines, *difference_lines(done.comparison)])


def difference_lines(found: Comparison) -> list[str]:
    """What got better and worse against the plan in force, folded for the screen of a terminal."""
    return [line for words in difference_sentences(found) for line in _folded(words, "  ", "    ")]


def difference_sentences(found: Comparison) -> list[str]:
    """What got better and worse against the plan in force."""
    moved = sorted(
        (one for one in found.parts if one.growth.differs),
        key=lambda one: (-abs(one.growth.median), one.part),
    )
    lines = []
    for name, up in (("More growth", True), ("Less growth", False)):
        rows = [
            f"{part(one.part).name} {one.growth.median:+.2f} % a week"
            for one in moved
            if (one.growth.median > 0) == up
        ]
        if rows:
            lines.append(f"{name}: {', '.join(rows[:SHOWN])}.")
    minutes = found.second.minutes - found.first.minutes
    if abs(minutes) >= LEAST_MINUTES:
        more = "more" if minutes > 0 else "less"
        lines.append(f"Minutes a week: {abs(minutes):.0f} {more}")
    better = [one for one in found.remarks if _worth(one) < 0]
    worse = [one for one in found.remarks if _worth(one) > 0]
    for name, pairs in (("Better in the audit", better), ("Worse in the audit", worse)):
        if pairs:
            rows = [_pair(one) for one in pairs[:SHOWN]]
            more = f"; {len(pairs) - SHOWN} more" if len(pairs) > SHOWN else ""
            lines.append(f"{name}: {'; '.join(rows)}{more}.")
    if not better and not worse:
        lines.append("No verdict of the audit changes.")
    return lines


def _worth(one: RemarkPair) -> int:
    """How far the verdict moved: below 0 for the better. What is new and holds is no change."""
    first = RANK[one.first.verdict] if one.first is not None else 0
    second = RANK[one.second.verdict] if one.second is not None else 0
    return second - first


def _pair(one: RemarkPair) -> str:
    first = one.first.verdict if one.first is not None else "not there"
    second = one.second.verdict if one.second is not None else "gone"
    return f"{one.criterion} of {subject_words(one.subject)} {first} -> {second}"
