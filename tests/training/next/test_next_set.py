"""The next set: rest until repetitions hold, then a lighter load; never heavier after pain."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.exercises import catalogue
from setwright.training.next_set import next_set
from setwright.training.rest import rest_before
from setwright.training.trouble import NONE, Trouble

BOUNDED = settings(derandomize=True, max_examples=25, deadline=None)
PULLDOWN = "lat-pulldown"


def ask(diary, done, lift=None, **changes):
    lift = lift or diary.entry()
    exercise = catalogue.exercise(lift.exercise)
    return next_set(diary.lifter, lift, done, exercise, diary.gym, diary.intake, **changes)


def known(new_diary, **changes):
    """A person with three even weeks on the pulldown: 10, 9, 9 at 50 kg with 2 left."""
    diary = new_diary(**changes)
    for day in (0, 7, 14):
        diary.outing(day, 50.0, (10, 9, 9))
    return diary


def test_an_even_session_goes_on_as_planned(new_diary):
    diary = known(new_diary)
    done = diary.outing(21, 50.0, (10,))
    step = ask(diary, done)
    assert step.number == 2
    assert step.load_kg == 50.0
    assert 8 <= step.reps <= 12
    assert 120 <= step.rest_s <= 180
    assert step.because


def test_a_large_drop_lengthens_the_rest(new_diary):
    """The rest-1-vs-3-min and rest-reps trials: shorter rest costs repetitions."""
    even, fell = known(new_diary), known(new_diary)
    lift = even.entry(sets=4, rest_s=(60, 90))
    held = ask(even, even.outing(21, 50.0, (10, 10), 2.0), lift)
    dropped = ask(fell, fell.outing(21, 50.0, (12, 8), 2.0), lift)
    assert dropped.rest_s > held.rest_s
    assert dropped.rest_s <= 360


def test_the_load_comes_down_when_no_rest_is_enough(new_diary):
    diary = known(new_diary)
    done = diary.outing(21, 50.0, (6, 4), 0.0, to_failure=True)
    step = ask(diary, done)
    assert step.load_kg < 50.0
    assert step.expected >= 7.5
    assert any("lighter" in one for one in step.because)


def test_after_a_set_without_a_repetition_the_next_is_lighter_or_there_is_none(new_diary):
    diary = known(new_diary)
    done = diary.outing(21, 50.0, (10,))
    assert ask(diary, done, failed_kg=60.0).load_kg == 50.0
    step = ask(diary, done, failed_kg=50.0)
    assert 0 < step.load_kg <= 40.0
    lightest = diary.ladder(PULLDOWN).lightest()
    step = ask(diary, diary.outing(28, lightest, (4,)), failed_kg=lightest)
    assert step.load_kg is None and step.over
    assert "easier" in step.because[0]


def test_a_first_set_far_too_light_goes_up_a_step_once(new_diary):
    diary = known(new_diary)
    done = diary.outing(21, 35.0, (12,), 6.0)
    step = ask(diary, done)
    assert step.load_kg == diary.ladder(PULLDOWN).above(35.0)
    assert ask(diary, done, may_rise=False).load_kg == 35.0
    for trouble in (Trouble(pain=1), Trouble(technique=True)):
        assert ask(diary, done, trouble=trouble).load_kg == 35.0


@pytest.mark.parametrize("trouble", [Trouble(pain=6), Trouble(symptoms=("chest pain",))])
def test_strong_pain_and_symptoms_end_the_exercise(new_diary, trouble):
    diary = known(new_diary)
    step = ask(diary, diary.outing(21, 50.0, (10,)), trouble=trouble)
    assert step.over
    assert step.load_kg is None
    assert step.reps == 0
    assert step.evidence


def test_pain_at_the_lightest_load_ends_the_exercise(new_diary):
    diary = known(new_diary)
    lightest = diary.ladder(PULLDOWN).lightest()
    step = ask(diary, diary.outing(21, lightest, (12,), 5.0), trouble=Trouble(pain=4))
    assert step.over


def test_all_sets_done_is_said(new_diary):
    diary = known(new_diary)
    step = ask(diary, diary.outing(21, 50.0, (10, 9, 9)))
    assert step.over
    with pytest.raises(ValueError, match="no set"):
        ask(diary, ())


def test_the_floor_of_the_answers_holds(new_diary):
    diary = new_diary(setting="alone")
    done = diary.outing(0, 60.0, (8,), 3.0, "barbell-bench-press")
    step = ask(diary, done, diary.entry("barbell-bench-press", rir=(0, 0)))
    assert step.rir >= 2


@BOUNDED
@given(
    reps=st.integers(1, 20),
    rir=st.one_of(st.none(), st.integers(0, 5)),
    load=st.sampled_from([20.0, 50.0, 80.0]),
    pain=st.integers(0, 5),
    technique=st.booleans(),
)
def test_always_an_answer_within_the_kit_and_the_rests(new_diary, reps, rir, load, pain, technique):
    diary = known(new_diary)
    done = diary.outing(21, load, (reps,), None if rir is None else float(rir))
    trouble = Trouble(pain=pain, technique=technique)
    step = ask(diary, done, trouble=trouble)
    steps = diary.ladder(PULLDOWN)
    assert step.because
    assert step.load_kg in steps.steps
    assert 120 <= step.rest_s <= 360
    assert step.reps >= 1
    assert step.load_kg <= (load if trouble != NONE else steps.above(load))
    if pain >= 4:
        assert step.load_kg < load


@BOUNDED
@given(reps=st.integers(3, 14), more=st.integers(1, 4), rir=st.integers(0, 3))
def test_a_better_set_never_leads_to_a_lighter_next_one(new_diary, reps, more, rir):
    loads = []
    for done in (reps, reps + more):
        diary = known(new_diary)
        loads.append(ask(diary, diary.outing(21, 50.0, (done,), float(rir))).load_kg)
    assert loads[1] >= loads[0]


@BOUNDED
@given(
    fresh=st.floats(4, 20),
    half_s=st.floats(10, 300),
    last=st.floats(1, 20),
    longest=st.integers(200, 400),
)
def test_the_rest_is_the_shortest_of_its_grid_that_is_enough(
    new_diary, fresh, half_s, last, longest
):
    lift = new_diary().entry(rest_s=(60, 120))

    def expected(rest_s: float) -> float:
        return fresh * rest_s / (rest_s + half_s)

    rest = rest_before(expected, lift, last, longest)
    assert 60 <= rest.seconds <= longest
    if rest.enough:
        assert expected(rest.seconds) >= 7.5 - 1e-9
    else:
        assert expected(longest) < 7.5
