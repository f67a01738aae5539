"""From a plan to the content of its teaching document."""

from __future__ import annotations

from setwright.audit.audit import audit
from setwright.audit.context import Context
from setwright.handout.explain import explain
from setwright.handout.teaching.content import Depth, Section, Teaching, mentioned
from setwright.handout.teaching.evidence import source_lines
from setwright.handout.teaching.sections.care import care_section
from setwright.handout.teaching.sections.criteria import criteria_sections
from setwright.handout.teaching.sections.exercises import exercise_sections
from setwright.handout.teaching.sections.left_out import left_out_section
from setwright.handout.teaching.sections.method import method_section
from setwright.handout.teaching.sections.person import person_section
from setwright.handout.teaching.sections.rehearsed import rehearsed_section
from setwright.handout.teaching.sections.response import response_section
from setwright.handout.teaching.sections.trade import trade_section
from setwright.handout.teaching.sections.trouble import trouble_section
from setwright.handout.teaching.sections.week import week_section
from setwright.plan.intake import Intake
from setwright.plan.week import Plan
from setwright.response.growth import doses_of, person_of

NOTICE = "This document does not diagnose or treat, and takes nobody's place who does."


def teaching(plan: Plan, intake: Intake | None = None, depth: Depth = "full") -> Teaching:
    """Everything a teaching document says.

    Args:
        plan: the week.
        intake: the person; without it an intermediate adult is assumed.
        depth: ``short`` for a page or two, ``full`` for every criterion.
    """
    report = audit(plan, intake)
    context = Context(
        plan,
        intake,
        report.rehearsal,
        doses_of(plan, report.rehearsal),
        report.response,
        person_of(intake),
    )
    full = depth == "full"
    sections: tuple[Section, ...] = (person_section(context), *week_section(context, full))
    if full:
        sections += (
            response_section(context, True),
            rehearsed_section(context),
            *criteria_sections(report),
            trade_section(context, True),
            *exercise_sections(explain(plan, intake, report.rehearsal)),
            left_out_section(context, True),
            method_section(),
            care_section(intake, True),
        )
    else:
        sections += (
            trouble_section(report),
            response_section(context, False),
            trade_section(context, False),
            left_out_section(context, False),
            care_section(intake, False),
        )
    whose = plan.person or (intake.name if intake else "")
    return Teaching(
        plan.title,
        f"Why this week is as it is, for {whose}" if whose else "Why this week is as it is",
        depth,
        sections,
        source_lines(mentioned(sections)),
        NOTICE,
    )
