"""Names as coaches write them: the exercise meant, or a question with likely answers."""

from pathlib import Path

import pytest

from setwright.exercises.catalogue import exercises
from setwright.plan.foreign.naming import named
from setwright.plan.foreign.tongues import in_english

FILE = Path(__file__).parent / "imports_fresh" / "names.tsv"
NAMES = [line.split("\t") for line in FILE.read_text(encoding="utf-8").splitlines()]


@pytest.mark.parametrize(("words", "meant"), NAMES)
def test_a_name_is_read_or_asked_about(words, meant) -> None:
    found = named(words)
    assert (found.ident or "?") == meant
    assert found.ident is None or found.confidence >= 0.8


def test_every_name_of_the_catalogue_means_its_exercise() -> None:
    for one in exercises():
        for name in (one.id, one.name, *one.synonyms, one.name.upper()):
            assert named(name).ident == one.id, name


@pytest.mark.parametrize(
    ("words", "english"),
    [
        ("Schrägbankdrücken mit Kurzhanteln", "incline bench press dumbbell"),
        ("Langhantelrudern", "barbell row"),
        ("Kreuzheben rumänisch", "deadlift romanian"),
        ("Développé couché haltères", "dumbbell bench press"),
        ("Elévations latérales", "lateral raise"),
        ("Remo con mancuerna", "dumbbell row"),
        ("Zittend roeien", "seated row"),
        ("Klimmzuege", "pull up"),
    ],
)
def test_other_languages_are_put_into_english(words, english) -> None:
    assert in_english(words) == english


@pytest.mark.parametrize(
    ("words", "not_meant"),
    [
        ("Standing dumbbell press", "seated-dumbbell-press"),
        ("High to low cable fly", "low-cable-fly"),
        ("Close grip barbell bench", "barbell-bench-press"),
        ("Lat raise", "plate-front-raise"),
        ("Machine lateral raise", "lateral-raise"),
    ],
)
def test_near_names_are_kept_apart(words, not_meant) -> None:
    assert named(words).ident != not_meant


def test_how_an_exercise_is_done_is_kept_as_a_note() -> None:
    found = named("Weighted pull-ups")
    assert (found.ident, found.extra) == ("pull-up", "weighted")
    assert found.confidence < 1
