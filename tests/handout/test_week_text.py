"""The printed week."""

from __future__ import annotations

from itertools import pairwise

from setwright.documents.units import load_words
from setwright.exercises import catalogue
from setwright.handout.timeline import blocks
from setwright.handout.week_text import week_text
from setwright.handout.wording import rest_words, rir_words
from setwright.plan.intake import Intake
from setwright.plan.week import Plan
from setwright.rehearsal.model import Rehearsal


def test_every_exercise_is_named_in_the_order_of_the_session(
    plan: Plan, rehearsal: Rehearsal
) -> None:
    text = week_text(plan, rehearsal)
    names = [
        catalogue.exercise(entry.exercise).name
        for session in plan.sessions
        for entry in session.exercises
    ]
    places = [text.index(name) for name in names]
    assert places == sorted(places)


def test_a_row_says_sets_repetitions_effort_rest_and_load(plan: Plan, rehearsal: Rehearsal) -> None:
    row = next(line for line in week_text(plan, rehearsal).splitlines() if "Romanian" in line)
    first = next(one for one in rehearsal.sessions[1].sets if one.entry == 0)
    assert first.load_kg is not None
    for words in ("3 x 6-10", "3 > 1", "2-3 min", "3/1/1/0", load_words(first.load_kg, "kg")):
        assert words in row


def test_totals_minutes_limits_notes_and_partials_are_there(
    plan: Plan, rehearsal: Rehearsal
) -> None:
    text = week_text(plan, rehearsal)
    assert "2 sessions, 7 exercises, 17 working sets" in text
    assert f"{rehearsal.sessions[0].total_s / 60:.0f} min of 45" in text
    assert "slow on the way down" in text
    assert "lengthened partials after the last full repetition" in text
    assert "12-15 repetitions a side" in text


def test_it_fits_on_paper(plan: Plan, rehearsal: Rehearsal, intake: Intake) -> None:
    assert max(len(line) for line in week_text(plan, rehearsal, intake).splitlines()) <= 96


def test_it_ends_with_the_stop_signs_and_the_person_s_own_cautions(
    plan: Plan, rehearsal: Rehearsal, intake: Intake
) -> None:
    general = week_text(plan, rehearsal)
    own = week_text(plan, rehearsal, intake)
    assert "emergency services" in general
    assert "licensed professional" in general
    assert "Alone under a free bar" in own
    assert "Alone under a free bar" not in general


def test_blocks_follow_one_another_and_fill_the_session(plan: Plan, rehearsal: Rehearsal) -> None:
    for session, lived in zip(plan.sessions, rehearsal.sessions, strict=True):
        found = blocks(session, lived)
        assert found[0].whole.start_s == 0
        for early, late in pairwise(found):
            assert early.whole.end_s == late.whole.start_s
        assert abs(found[-1].whole.end_s - lived.total_s) < 1e-6
        assert sorted(lane.position for block in found for lane in block.lanes) == list(
            range(len(session.exercises))
        )
        for block in found:
            for lane in block.lanes:
                assert len(lane.sets) == session.exercises[lane.position].sets
                assert all(block.opens_s <= one.start_s < one.end_s for one in lane.sets)


def test_superset_partners_share_a_block(plan: Plan, rehearsal: Rehearsal) -> None:
    found = blocks(plan.sessions[0], rehearsal.sessions[0])
    assert [[lane.position for lane in block.lanes] for block in found] == [[0], [1, 2], [3]]


def test_rest_is_written_as_coaches_write_it(plan: Plan) -> None:
    assert rest_words((120, 180)) == "2-3 min"
    assert rest_words((90, 90)) == "1.5 min"
    assert rest_words((45, 75)) == "45-75 s"
    assert rir_words(plan.sessions[1].exercises[2]) == "0"
