"""Several sets in one text: ``60x8,8,7``, ``60 x 8; 62,5 x 6 @1``."""

from __future__ import annotations

import re
from dataclasses import dataclass

from setwright.plan.amounts import AmountError
from setwright.plan.done_tail import Tail, read_tail
from setwright.plan.done_words import read_done_reps

TIMES = re.compile(
    r"(?:(?<=[\d\s.])|(?<=kg)|(?<=lb)|(?<=lbs)|(?<=bw)|(?<=/h)|\A)[x×*]\s*(?=\d)", re.IGNORECASE
)
_PARTIALS = r"(?:\s*\+\s*\d{1,4}\s*p(?:art(?:ial)?s?)?\b)?"
_REPS = re.compile(rf"\d{{1,4}}{_PARTIALS}(?:\s*,\s*\d{{1,4}}{_PARTIALS})*", re.IGNORECASE)
_NEXT = re.compile(
    r"\s*(?:bw\s*)?[+-]?\s*\d+(?:[.,]\d+)?\s*(?:kg|lbs?|/h|\s)*[x×*]\s*\d", re.IGNORECASE
)
AMBIGUOUS = "one `load x reps`; several sets are `100 x 5,5,4`, not `3 x 5 x 100`"


@dataclass(frozen=True)
class SetsText:
    """Sets of one load.

    Attributes:
        head: what stands before the x; None without an x.
        counts: full and partial repetitions of each set.
        tail: effort and what else was said.
    """

    head: str | None
    counts: tuple[tuple[int, int], ...]
    tail: Tail


def read_sets_text(text: str) -> SetsText:
    """Read ``load x reps, reps ...`` with what follows; the load is left as text.

    Raises:
        AmountError: when there are no repetitions, or more than one x.
    """
    times = TIMES.search(text)
    head = text[: times.start()].strip() if times else None
    after = text[times.end() :] if times else text.strip()
    if times and TIMES.search(after):
        raise AmountError(AMBIGUOUS)
    reps = _REPS.match(after)
    if reps is None:
        raise AmountError("repetitions after the x" if times else "repetitions")
    counts = tuple(read_done_reps(piece) for piece in reps[0].split(","))
    return SetsText(head, counts, read_tail(after[reps.end() :], len(counts)))


def split_groups(text: str) -> list[str]:
    """Cut where another load begins: at ``;``, a line end, or a comma before ``load x reps``."""
    groups = []
    start = 0
    for at, char in enumerate(text):
        if char in ";|\n":
            cut = True
        elif char == ",":
            cut = bool(TIMES.search(text[start:at])) and bool(_NEXT.match(text, at + 1))
        else:
            continue
        if cut:
            groups.append(text[start:at])
            start = at + 1
    return [piece.strip() for piece in (*groups, text[start:]) if piece.strip()]
