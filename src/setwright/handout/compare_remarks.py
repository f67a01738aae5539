"""Where the audits of two plans differ: criterion by criterion, how often and by how much."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.audit.compare import RemarkPair
from setwright.audit.remark import Remark
from setwright.handout.remark_words import remark_words, subject_words
from setwright.handout.wording import folded

WIDTH = 96
# Subjects of one criterion that are told whole.
SHOWN = 3
RANK = {"holds": 0, "close": 1, "misses": 2}
_OF = {"missed": "misses", "close": "close"}


def remark_lines(pairs: Sequence[RemarkPair], first: str, second: str) -> list[str]:
    """Criterion by criterion how often each plan misses, and what differs of the same subject."""
    lines = ["Where the audit differs"]
    worst_first = sorted(pairs, key=lambda pair: -max(_rank(pair.first), _rank(pair.second)))
    for criterion in dict.fromkeys(pair.criterion for pair in worst_first):
        here = [pair for pair in worst_first if pair.criterion == criterion]
        told = f"{criterion}: {_tally(here, first, second)}"
        both = [pair for pair in here if pair.first is not None and pair.second is not None]
        named = "; ".join(_pair(pair, first, second) for pair in both[:SHOWN])
        more = len(both) - SHOWN
        rest = f"; and {more} more (--json)" if more > 0 else ""
        told += f". {named}{rest}" if named else ""
        lines.append(folded(f"{told}.", WIDTH, initial_indent="  - ", subsequent_indent="    "))
    return lines


def _tally(pairs: Sequence[RemarkPair], first: str, second: str) -> str:
    """How often each plan misses or comes close."""
    said = []
    for name, remarks in (
        (first, [pair.first for pair in pairs]),
        (second, [pair.second for pair in pairs]),
    ):
        counts = [
            f"{count} {word}"
            for word in ("missed", "close")
            if (count := sum(1 for one in remarks if one is not None and one.verdict == _OF[word]))
        ]
        said.append(f"{name} {' and '.join(counts) or 'none missed'}")
    return ", ".join(said)


def _pair(pair: RemarkPair, first: str, second: str) -> str:
    """What both plans do for one subject, the worse one's figure with it."""
    worse = max((pair.first, pair.second), key=_rank)
    name = second if worse is pair.second else first
    said = remark_words(worse) if worse is not None else subject_words(pair.subject)
    return f"{name}: {said}"


def _rank(remark: Remark | None) -> int:
    return -1 if remark is None else RANK[remark.verdict]
