"""A talk about effort where felt and real repetitions in reserve lie more than one apart."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.exercises import catalogue
from setwright.training.effort import EVIDENCE, floor_of
from setwright.training.facts.week import Facts
from setwright.training.proposals.model import Expected, Proposal, proposal_id

KIND = "effort talk"
RANK = 70
FAR = 1.0


def propose(facts: Facts) -> Iterator[Proposal]:
    """One talk, about the pattern that is furthest off, when that is beyond doubt."""
    hurting = {one.exercise for one in facts.pain}
    for one in facts.honesty:
        honest = one.honesty
        sure = honest.low > 0 if honest.bias > 0 else honest.high < 0
        if abs(honest.bias) <= FAR or not sure:
            continue
        early = honest.bias > 0
        # Nobody whose answers or setting cap the effort is sent to failure, nor one in pain.
        safe = [
            name
            for name in one.exercises
            if name not in hurting and floor_of(facts.intake, catalogue.exercise(name)) == 0
        ]
        check = ""
        if early and safe:
            name = catalogue.exercise(safe[0]).name
            check = f"; let one last set of {name} go to failure, with someone near"
        how = "earlier" if early else "later"
        yield Proposal(
            proposal_id(KIND, one.pattern, facts.monday),
            KIND,
            one.pattern,
            f"Talk about effort on {one.pattern}{check}",
            {},
            (
                f"Sets of {one.pattern} stop {abs(honest.bias):.1f} repetitions {how} than felt "
                f"({abs(honest.low if early else honest.high):.1f} to "
                f"{abs(honest.high if early else honest.low):.1f}), from {honest.calls} calls.",
            ),
            Expected(words="Sets end as near to failure as the plan means them to."),
            "The sessions to come go on to correct the reserve they ask for, within bounds.",
            EVIDENCE,
            abs(honest.bias),
            RANK,
        )
        return
