"""Sets whose number was given twice, as two phones in one session write them."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Any

import pytest

from setwright.handout.review_words import twice_words
from setwright.plan.log import SetRecord, Withdrawn
from setwright.training.facts.twice import written_twice


def a_set(ident: int, **fields: Any) -> SetRecord:
    return SetRecord(
        kind="set",
        id=f"00000000-0000-4000-8000-{ident:012}",
        at=datetime(2026, 9, 7, 18, ident),
        **{"exercise": "back-squat", "load_kg": 60.0, "reps": 5, "number": 1, **fields},
    )


@pytest.mark.parametrize(
    "other", [{"number": 2}, {"exercise": "leg-press"}, {"role": "drop"}, {"number": None}]
)
def test_sets_apart(other: dict[str, Any]) -> None:
    assert written_twice([a_set(1), a_set(2, **other)]) == ()


def test_two_sides_of_one_number_are_two_sets() -> None:
    assert written_twice([a_set(1, side="left"), a_set(2, side="right")]) == ()
    assert len(written_twice([a_set(1, side="left"), a_set(2, side="left")])) == 2


def test_what_is_taken_back_after_the_week_does_not_count_in_it(story: Callable[..., Any]) -> None:
    made = story().weeks(3)
    first = next(one for one in made.records if isinstance(one, SetRecord))
    held = len(made.facts(0).client.done)
    later = first.at + timedelta(20)
    made.records.append(Withdrawn(id=a_set(9).id, at=later, of=first.id))
    assert len(made.facts(0).client.done) == held - 1


def test_the_review_of_the_week_says_it_and_no_other_week(story: Callable[..., Any]) -> None:
    made = story().weeks(3)
    place = next(n for n, one in enumerate(made.records) if isinstance(one, SetRecord))
    made.records[place] = first = made.records[place].model_copy(update={"number": 1})
    made.records.append(first.model_copy(update={"id": a_set(9).id}))
    assert "on Mon, set 1. All of them count" in twice_words(made.facts(0))
    assert twice_words(made.facts(1)) == ""
