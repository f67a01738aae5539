"""Why each exercise: every statement is there and stands on known findings."""

from __future__ import annotations

import re

import pytest

from setwright.anatomy.atlas import part, parts
from setwright.audit.audit import context_of
from setwright.exercises import catalogue
from setwright.handout.cautions import cautions
from setwright.handout.explain import explain, explained_text
from setwright.handout.explained import ExplainedExercise, ExplainedSession, Said
from setwright.plan.intake import Intake
from setwright.plan.week import Plan
from setwright.sources.library import findings


@pytest.fixture(scope="module")
def explained(plan: Plan, intake: Intake) -> tuple[ExplainedSession, ...]:
    return explain(plan, intake)


def of(explained: tuple[ExplainedSession, ...], exercise: str) -> ExplainedExercise:
    return next(
        item for session in explained for item in session.exercises if item.exercise == exercise
    )


def said(item: ExplainedExercise, topic: str) -> str:
    return " ".join(one.words for one in item.said if one.topic == topic)


def everything(explained: tuple[ExplainedSession, ...]) -> list[Said]:
    return [one for session in explained for item in session.exercises for one in item.said]


def test_every_exercise_is_explained_in_order(
    plan: Plan, explained: tuple[ExplainedSession, ...]
) -> None:
    assert [[item.exercise for item in session.exercises] for session in explained] == [
        [entry.exercise for entry in session.exercises] for session in plan.sessions
    ]


def test_every_exercise_says_why_where_how_much_and_how(
    explained: tuple[ExplainedSession, ...],
) -> None:
    for session in explained:
        for item in session.exercises:
            topics = {one.topic for one in item.said}
            assert {"why", "place", "sets", "reps", "effort", "rest", "technique"} <= topics
            assert item.cues


def test_statements_cite_only_known_findings(explained: tuple[ExplainedSession, ...]) -> None:
    cited = {ident for one in everything(explained) for ident in one.sources}
    assert cited
    assert cited - set(findings()) == set()


def test_statements_are_sentences(explained: tuple[ExplainedSession, ...]) -> None:
    for one in everything(explained):
        assert one.words.endswith(".")
        assert one.words[0].isupper() or one.words[0].isdigit()
        assert "  " not in one.words and "_" not in one.words


def test_a_squat_says_what_it_leaves_and_who_makes_up_for_it(
    explained: tuple[ExplainedSession, ...],
) -> None:
    words = said(of(explained, "back-squat"), "why")
    assert "leaves rectus femoris" in words
    assert "Leg extension for rectus femoris" in words


def test_the_figures_are_those_of_the_week(
    plan: Plan, intake: Intake, explained: tuple[ExplainedSession, ...]
) -> None:
    context = context_of(plan, intake)
    # The muscle meant is that of the first part that ends the set; its best part counts each day.
    lead = part(catalogue.profile("back-squat").limiting[0]).muscle
    columns = [context.column(one.id) for one in parts() if one.muscle == lead]
    squat = context.response.session_sets[:, columns].max(axis=1)
    assert f"{round(float(squat.sum()), 1):g} fractional sets" in said(
        of(explained, "back-squat"), "sets"
    )


def test_effort_names_the_floor_of_the_person(
    plan: Plan, explained: tuple[ExplainedSession, ...]
) -> None:
    assert "high blood pressure" in said(of(explained, "leg-extension"), "effort")
    without = explain(plan)
    assert "high blood pressure" not in said(of(without, "leg-extension"), "effort")


def test_partners_tempo_and_partials_are_explained(
    explained: tuple[ExplainedSession, ...],
) -> None:
    assert "alternated with Seated leg curl" in said(of(explained, "leg-extension"), "place")
    assert "Lower in 3 s, hold 1 s" in said(of(explained, "romanian-deadlift"), "technique")
    assert "partials in the long half" in said(of(explained, "seated-leg-curl"), "technique")
    assert "safeties" in said(of(explained, "back-squat"), "care")


def test_the_text_lists_every_source_once(
    explained: tuple[ExplainedSession, ...], intake: Intake
) -> None:
    text = explained_text(explained, intake)
    listed = text[text.index("\nSources\n") :]
    cited = {ident for one in everything(explained) for ident in one.sources}
    assert all(listed.count(f"  {ident}: ") == 1 for ident in cited)
    marks = re.findall(r"\[([\d,\s]+)\]", text[: text.index("\nSources\n")])
    numbers = {int(one) for mark in marks for one in mark.split(",")}
    assert numbers == set(range(1, len(cited) + 1))
    assert max(len(line) for line in text.splitlines()) <= 96


def test_cautions_stand_on_known_findings_and_never_treat(intake: Intake) -> None:
    for one in cautions(intake):
        assert one.sources
        assert set(one.sources) <= set(findings())
    words = " ".join(one.words for one in cautions(intake))
    assert "licensed professional" in words
    assert "does not diagnose or treat" in words


def test_screening_answers_add_their_own_cautions(intake: Intake) -> None:
    pregnant = intake.model_copy(
        update={"screening": intake.screening.model_copy(update={"pregnant": True})}
    )
    extra = {one.words for one in cautions(pregnant)} - {one.words for one in cautions(intake)}
    assert any("maternity provider" in words for words in extra)
    assert any("should clear training" in words for words in extra)
