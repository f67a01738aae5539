"""The audit in sentences."""

from __future__ import annotations

from dataclasses import replace
from string import Formatter
from typing import get_args

import pytest

from setwright.audit.audit import AuditReport, audit
from setwright.audit.registry import registry
from setwright.audit.remark import Mend, MendKind, Remark
from setwright.handout.audit_text import audit_text
from setwright.handout.remark_words import (
    MENDS,
    SENTENCES,
    mend_words,
    plainly,
    remark_words,
    subject_words,
)
from setwright.plan.intake import Intake
from setwright.plan.week import Plan


@pytest.fixture(scope="module")
def report(plan: Plan, intake: Intake) -> AuditReport:
    return audit(plan, intake)


def test_every_miss_is_said_with_its_evidence_and_mend(plan: Plan, report: AuditReport) -> None:
    text = " ".join(audit_text(report, plan).split())
    missed = [remark for remark in report.remarks if remark.verdict == "misses"]
    assert missed
    for remark in missed:
        said = remark_words(remark)
        assert f"{said[:1].upper()}{said[1:]}." in text
        assert all(ident in text for ident in remark.evidence)
        if remark.mend is not None:
            assert mend_words(remark.mend) in text


def test_the_head_counts_every_verdict(plan: Plan, report: AuditReport) -> None:
    text = audit_text(report, plan)
    assert (
        f"{report.count('holds')} hold, {report.count('close')} close, "
        f"{report.count('misses')} miss" in text
    )


def test_what_holds_is_shown_only_on_demand(plan: Plan, report: AuditReport) -> None:
    brief, full = audit_text(report, plan), audit_text(report, plan, show_all=True)
    assert len(full) > len(brief)
    assert "\nHolds\n" in full
    assert "\nHolds\n" not in brief
    for item in registry():
        if any(remark.criterion == item.id for remark in report.remarks):
            assert item.id in full


def test_lines_fit_the_terminal(plan: Plan, report: AuditReport) -> None:
    lines = audit_text(report, plan, show_all=True).splitlines()
    assert max(len(line) for line in lines) <= 96


def test_a_declared_miss_names_the_limit(plan: Plan, report: AuditReport) -> None:
    first = next(remark for remark in report.remarks if remark.verdict == "misses")
    changed = tuple(
        replace(remark, unavoidable="two evenings are all there are") if remark == first else remark
        for remark in report.remarks
    )
    text = audit_text(replace(report, remarks=changed), plan)
    assert "1 of them declared unavoidable" in text
    assert "two evenings are all there are" in " ".join(text.split())


def test_every_sentence_for_a_criterion_has_a_criterion() -> None:
    known = {item.id for item in registry()}
    assert {key.split(" ")[0] for key in SENTENCES} <= known


def test_every_real_remark_finds_the_names_its_sentence_uses(report: AuditReport) -> None:
    for remark in report.remarks:
        sentence = SENTENCES.get(f"{remark.criterion} {remark.verdict}") or SENTENCES.get(
            remark.criterion
        )
        if sentence is None or remark.subject == "week":
            continue
        names = {name for _, name, _, _ in Formatter().parse(sentence) if name}
        given = {"subject", "figure", "least", "most", "days", *(name for name, _ in remark.detail)}
        assert names <= given, remark


def test_a_criterion_without_a_sentence_is_said_plainly() -> None:
    remark = Remark(
        "unheard-of", "back-squat on monday", "close", 3.14159, "kg", 1, 2, (), detail=(("a_b", 4),)
    )
    assert remark_words(remark) == plainly(remark)
    assert plainly(remark) == "Back squat on Monday: 3.14 kg (at least 1, at most 2); a b 4"


def test_subjects_get_their_names() -> None:
    assert subject_words("leg-extension and seated-leg-curl on monday") == (
        "Leg extension and Seated leg curl on Monday"
    )
    assert subject_words("quadriceps") == "quadriceps"


@pytest.mark.parametrize("kind", get_args(MendKind))
def test_every_mend_has_words(kind: MendKind) -> None:
    assert kind in MENDS
    bare = mend_words(Mend(kind, "back-squat"))
    full = mend_words(Mend(kind, "back-squat", 2.0, "sets", 5.0))
    assert "Back squat" in bare and "Back squat" in full
    assert "which brings it to 5" in full
    assert "  " not in bare


def test_one_day_is_said_in_the_singular() -> None:
    remark = Remark(
        criterion="frequency",
        subject="soleus",
        verdict="close",
        figure=1.0,
        unit="sessions a week",
        low=2.0,
        high=None,
        evidence=(),
    )
    assert remark_words(remark) == "soleus: trained on 1 day a week (at least 2)"
    assert "on 2 days a week" in remark_words(replace(remark, figure=2.0))
