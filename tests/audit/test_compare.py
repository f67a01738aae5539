"""Two plans held against each other."""

import pytest

from setwright.audit.compare import compare
from setwright.handout.compare_text import compare_text, sentences
from setwright.plan.read import read_plain_text
from setwright.plan.week import Plan

HEAD = "Title: {}\nAll: RIR 2, rest 2 min\n"
SHORT = """Monday - Legs
Back squat 3 x 6-8
Seated leg curl 2 x 10-12
Thursday - Top
Cable row 3 x 10"""
LONG = SHORT.replace("3 x 6-8", "6 x 6-8") + "\nBench press 4 x 8\nLateral raise 4 x 15"


def plan(title: str, lines: str) -> Plan:
    return read_plain_text(HEAD.format(title) + lines, "t")


@pytest.fixture(scope="module")
def plans() -> tuple[Plan, Plan]:
    return plan("short", SHORT), plan("long", LONG)


def test_a_plan_against_itself_differs_in_nothing(plans: tuple[Plan, Plan]) -> None:
    found = compare(plans[0], plans[0])
    assert not found.growth.differs
    assert not any(one.growth.differs for one in found.parts)
    assert found.remarks == ()
    assert all("no difference" in one.lower() for one in sentences(found)[:3])


def test_the_longer_plan_costs_minutes_and_gives_growth(plans: tuple[Plan, Plan]) -> None:
    found = compare(*plans)
    assert found.second.minutes > found.first.minutes
    assert found.growth.differs and found.growth.low > 0
    chest = next(one for one in found.parts if "pectoralis" in one.part or "chest" in one.part)
    assert chest.sets[0] < chest.sets[1] and chest.growth.differs
    assert "horizontal press" in found.second.patterns
    assert "horizontal press" not in found.first.patterns
    text = compare_text(found, "first", "second")
    assert "first is shorter by" in text
    assert "second gives more" in text
    assert "first is lighter on the spine" in text


def test_turned_round_the_difference_changes_its_sign(plans: tuple[Plan, Plan]) -> None:
    there, back = compare(*plans), compare(plans[1], plans[0])
    assert there.growth.median == pytest.approx(-back.growth.median, abs=1e-6)
    assert there.growth.low == pytest.approx(-back.growth.high, abs=1e-6)
    assert {pair.subject for pair in there.remarks} == {pair.subject for pair in back.remarks}


def test_a_difference_inside_its_interval_is_called_none(plans: tuple[Plan, Plan]) -> None:
    other = plan("press", SHORT.replace("Back squat", "Hack squat"))
    found = compare(plans[0], other)
    doubtful = [one for one in found.parts if one.growth.low < 0 < one.growth.high]
    assert doubtful
    assert not any(one.growth.differs for one in doubtful)


def test_remarks_differ_where_one_plan_misses(plans: tuple[Plan, Plan]) -> None:
    found = compare(*plans)
    pair = next(one for one in found.remarks if one.criterion == "coverage")
    assert pair.first is not None and pair.first.verdict == "misses"
    assert pair.second is None or pair.second.verdict != "misses"


def test_what_is_better_for_what_stands_before_the_tables(plans: tuple[Plan, Plan]) -> None:
    text = compare_text(compare(*plans))
    at = [text.index(head) for head in ("Which is better", "sessions a week", "Fractional sets")]
    assert at == sorted(at)


def test_a_muscle_of_which_all_parts_differ_is_named_once(plans: tuple[Plan, Plan]) -> None:
    better = next(one for one in sentences(compare(*plans)) if one.startswith("B is better for"))
    assert "pectoralis major (" in better
    assert "pectoralis major, sternal" not in better


def test_the_audit_is_told_by_criterion_with_both_counts(plans: tuple[Plan, Plan]) -> None:
    found = compare(*plans)
    text = compare_text(found)
    lines = text[text.index("Where the audit differs") :].splitlines()
    heads = [line for line in lines if line.startswith("  - ")]
    assert len(heads) == len({pair.criterion for pair in found.remarks})
    missed = sum(
        1
        for pair in found.remarks
        if pair.criterion == "coverage"
        and pair.first is not None
        and pair.first.verdict == "misses"
    )
    assert any(line.startswith(f"  - coverage: A {missed} missed") for line in heads)
