"""What a teaching document says, before any format."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from setwright.anatomy.atlas import index, parts
from setwright.audit.audit import AuditReport, audit
from setwright.audit.registry import registry
from setwright.exercises import catalogue
from setwright.handout.cautions import cautions
from setwright.handout.remark_words import remark_words
from setwright.handout.teaching.build import teaching
from setwright.handout.teaching.content import (
    Picture,
    Points,
    Ruling,
    Table,
    Teaching,
    Words,
    mentioned,
)
from setwright.handout.teaching.evidence import known, shown, weighed
from setwright.handout.teaching.lessons import LESSONS
from setwright.handout.teaching.sections.criteria import verdicts
from setwright.handout.wording import number
from setwright.plan.intake import Intake
from setwright.plan.week import Entry, Plan, Session
from setwright.sources.library import finding, findings


@pytest.fixture(scope="module")
def report(plan: Plan, intake: Intake) -> AuditReport:
    return audit(plan, intake)


def rulings(document: Teaching) -> dict[str, Ruling]:
    blocks = (block for section in document.sections for block in section.blocks)
    return {one.criterion: one for one in blocks if isinstance(one, Ruling)}


def words_of(document: Teaching) -> Iterator[str]:
    for section in document.sections:
        for block in section.blocks:
            if isinstance(block, Words):
                yield block.text
            elif isinstance(block, Points):
                yield from (item.text for item in block.items)
            elif isinstance(block, Table):
                yield from (cell for row in block.rows for cell in row)


def test_every_criterion_is_taught_once(full: Teaching) -> None:
    assert set(LESSONS) == {one.id for one in registry()}
    taught = [
        block.criterion
        for section in full.sections
        for block in section.blocks
        if isinstance(block, Ruling)
    ]
    assert sorted(taught) == sorted(one.id for one in registry())


def test_verdicts_and_counts_are_the_audits(full: Teaching, report: AuditReport) -> None:
    order = ("holds", "close", "misses")
    for ident, one in rulings(full).items():
        remarks = [remark for remark in report.remarks if remark.criterion == ident]
        if not remarks:
            assert one.standing == "no case here"
            continue
        assert one.standing == max((remark.verdict for remark in remarks), key=order.index)
        assert one.counts.startswith(f"{len(remarks)} check")
        for verdict in ("close", "misses"):
            count = sum(remark.verdict == verdict for remark in remarks)
            assert sum(it.verdict == verdict for it in one.found) == count


def test_every_figure_of_the_audit_is_there(full: Teaching, report: AuditReport) -> None:
    told = rulings(full)
    for remark in report.remarks:
        one = told[remark.criterion]
        if remark.verdict == "holds":
            held = " ".join(one.held)
            said = (
                number(remark.figure)
                if remark.figure is not None and remark.subject != "week"
                else remark_words(remark)[1:]
            )
            assert said in held
        else:
            words = remark_words(remark)[1:]
            assert any(words in it.words for it in one.found)


def test_the_table_shows_the_worst_answer(report: AuditReport) -> None:
    rows = {row[0]: row for row in verdicts(report).rows}
    assert len(rows) == len(registry())
    for one in registry():
        row = rows[one.title[:1].upper() + one.title[1:]]
        remarks = [remark for remark in report.remarks if remark.criterion == one.id]
        if any(remark.verdict == "misses" for remark in remarks):
            figures = {
                number(remark.figure)
                for remark in remarks
                if remark.verdict == "misses" and remark.figure is not None
            }
            assert row[3] == "misses"
            assert not figures or any(figure in row[1] for figure in figures)


def test_strength_claims_no_more_than_the_findings_allow() -> None:
    for one in registry():
        kinds = {finding(ident).basis for ident in known(one.evidence)}
        if LESSONS[one.id].strength == "good":
            assert any(
                finding(ident).basis == "meta-analysis" and finding(ident).read != "from memory"
                for ident in known(one.evidence)
            ), one.id
        if kinds <= {"common practice", "derived", "case report"}:
            assert LESSONS[one.id].strength == "thin", one.id


def test_figures_of_lessons_are_the_findings_own() -> None:
    for lesson in LESSONS.values():
        for (ident, name, _), words in zip(lesson.shown, shown(lesson.shown), strict=True):
            value = next(one for one in finding(ident).values if one.name == name)
            assert words.sources == (ident,)
            interval = (value.low, value.high) if None not in (value.low, value.high) else ()
            figures = [one for one in (value.value, *interval) if one is not None]
            assert figures
            assert all(number(one) in words.text for one in figures)
    with pytest.raises(KeyError):
        shown([("practice-rest", "no such value", "words")])


def test_an_interval_that_spans_zero_is_called_so() -> None:
    spans, not_ = shown(
        [
            ("rest-hypertrophy-bayes-meta-2024", "longer minus short, arm", "arm"),
            ("partials-long-vs-short-meta-2025", "overall", "partials"),
        ]
    )
    assert "spans zero" in spans.text
    assert "spans zero" not in not_.text


def test_findings_are_weighed_by_kind() -> None:
    said = weighed(("practice-rest", "rest-hypertrophy-bayes-meta-2024", "common practice"))
    assert said == "1 meta-analysis and 1 fact of the trade; read: 1 as abstract and 1 from memory"
    assert weighed(("common practice",)) == "common practice only"


def test_sources_are_numbered_as_mentioned(full: Teaching) -> None:
    assert [one.ident for one in full.sources] == list(known(mentioned(full.sections)))
    assert [one.number for one in full.sources] == list(range(1, len(full.sources) + 1))
    for one in full.sources:
        assert one.finding == findings()[one.ident].finding
        assert "et al" not in one.cited


def test_names_of_sections_and_pictures_are_unique_and_safe(full: Teaching) -> None:
    idents = [one.ident for one in full.sections]
    names = [
        block.name
        for section in full.sections
        for block in section.blocks
        if isinstance(block, Picture)
    ]
    for found in (idents, names):
        assert len(set(found)) == len(found)
        assert all(re.fullmatch(r"[a-z0-9-]+", one) for one in found)
    assert {"response", "dose", "rehearsal-1", "rehearsal-2", "trade", "worth"} == set(names)


def test_tables_are_square(full: Teaching, short: Teaching) -> None:
    for document in (full, short):
        for section in document.sections:
            for block in section.blocks:
                if isinstance(block, Table):
                    assert all(len(row) == len(block.heads) for row in block.rows)
                    assert all(at < len(block.heads) for at in (*block.figures, *block.wide))


def test_the_person_and_the_cautions_are_told(full: Teaching, intake: Intake) -> None:
    said = "\n".join(words_of(full))
    for words in ("Ilka: intermediate, 40-59", "glutes", "calves", "vertical press (pain)"):
        assert words in said
    for one in cautions(intake):
        assert one.words in said


def test_without_an_intake_the_assumption_is_said(plan: Plan) -> None:
    said = "\n".join(words_of(teaching(plan, None, "short")))
    assert "No intake was given" in said


def test_what_would_reach_a_part_does(full: Teaching, report: AuditReport) -> None:
    (table,) = (
        block
        for section in full.sections
        for block in section.blocks
        if isinstance(block, Table) and "would reach it" in block.heads
    )
    weekly = dict(zip(report.response.parts, report.response.weekly_sets.tolist(), strict=True))
    by_name = {one.name: one for one in parts()}
    exercises = {one.name: one for one in catalogue.exercises()}
    assert len(table.rows) > 2
    for name, gets, least, would in table.rows:
        part = by_name[name]
        assert gets == number(round(weekly[part.id], 1))
        sets, _, words = would.partition(" ")
        exercise = exercises[words.partition(" of ")[2]]
        share = catalogue.shares()[catalogue.row(exercise.id), index()[part.id]]
        assert float(gets) < float(least) <= float(gets) + int(sets) * share + 0.01


def test_declared_misses_are_told(hard: Plan, hard_full: Teaching) -> None:
    said = "\n".join(words_of(hard_full))
    assert hard.unavoidable[0].because in said


def test_short_says_less(full: Teaching, short: Teaching) -> None:
    assert sum(map(len, words_of(short))) < sum(map(len, words_of(full))) / 2
    assert not rulings(short)


def test_the_same_week_gives_the_same_document(plan: Plan, intake: Intake, full: Teaching) -> None:
    assert teaching(plan, intake) == full


@pytest.mark.parametrize("depth", ["short", "full"])
def test_the_smallest_plan_can_be_taught(depth: str) -> None:
    entry = Entry(exercise="push-up", sets=1, reps=(8, 12), rir=(2, 2), rest_s=(60, 60))
    session = Session(name="Only", day="monday", exercises=(entry,))
    plan = Plan(setwright="plan/1", title="One", sessions=(session,))
    document = teaching(plan, None, depth)
    assert document.title == "One"
    assert "Push-up" in "\n".join(words_of(document))
