"""Names are matched surely or not at all."""

import pytest

from setwright.exercises import catalogue
from setwright.exercises.names import match


def test_every_id_and_name_is_sure():
    for exercise in catalogue.exercises():
        for words in (exercise.id, exercise.name, exercise.name.upper()):
            assert match(words).sure == exercise.id, words


@pytest.mark.parametrize(
    ("words", "meant"),
    [
        ("Back Squats", "back-squat"),
        ("barbell back squat", "back-squat"),
        ("Romanian Deadlifts", "romanian-deadlift"),
        ("seated leg curls", "seated-leg-curl"),
        ("romanian deadlfit", "romanian-deadlift"),
    ],
)
def test_case_plural_and_small_slips(words, meant):
    assert match(words).sure == meant


@pytest.mark.parametrize("words", ["", "xyzzy", "deep", "calf raise thing maybe"])
def test_vague_words_are_not_guessed(words):
    assert match(words).sure is None


def test_candidates_are_ranked_and_limited():
    found = match("calf rise on something", limit=3)
    scores = [score for _, score in found.candidates]
    assert len(scores) <= 3
    assert scores == sorted(scores, reverse=True)
    assert all(0 <= score <= 100 for score in scores)
