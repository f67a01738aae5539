"""What holds for the audit of any valid plan."""

from __future__ import annotations

import re

from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.audit.audit import audit
from setwright.exercises import catalogue
from setwright.handout.remark_words import mend_words
from setwright.plan.week import Entry, Plan, Session

ENTRIES = st.builds(
    Entry,
    exercise=st.sampled_from(catalogue.ids()),
    sets=st.integers(1, 20),
    reps=st.integers(1, 50).map(lambda reps: (reps, reps)),
    rir=st.sampled_from([(3.0, 1.0), (0.0, 0.0), (2.0, 2.0)]),
    rest_s=st.sampled_from([(0, 0), (60, 90), (900, 900)]),
    superset=st.sampled_from([None, "A"]),
)
WORK = st.lists(ENTRIES, min_size=2, max_size=6)


def plan_of(work: list[Entry]) -> Plan:
    session = Session(name="Day", day="friday", minutes=30, exercises=tuple(work))
    return Plan(setwright="plan/1", title="Any", sessions=(session,))


@given(WORK)
@settings(max_examples=40, deadline=None, derandomize=True)
def test_every_plan_is_judged_alike_twice_and_by_its_figures(work: list[Entry]) -> None:
    remarks = audit(plan_of(work)).remarks
    assert remarks == audit(plan_of(work)).remarks
    subjects = [(one.criterion, one.subject) for one in remarks if one.criterion == "coverage"]
    assert len(subjects) == len(set(subjects))
    for one in remarks:
        if one.mend is not None:
            # Something is to be done, and as much as can be done.
            assert not re.search(r"\b0 (sets?|s|min|repetitions?)\b", mend_words(one.mend))
        if one.criterion == "coverage" and one.verdict == "misses":
            assert one.figure is not None and one.low is not None
            assert one.figure < one.low
