"""Ten intakes designed: time, proven gap, misses; against five ordinary weeks of the same minutes.

Run: python benchmarks/design_ten_intakes.py
"""

from __future__ import annotations

import time
from pathlib import Path

from setwright.audit.audit import audit
from setwright.design.design import design
from setwright.design.ordinary import ordinary_weeks
from setwright.design.problem import problem_of
from setwright.design.settle import worth
from setwright.exercises import catalogue
from setwright.plan.read import read_intake
from setwright.plan.week import Plan

FOLDER = Path(__file__).parents[1] / "examples" / "intakes"


def spinal_sets(plan: Plan) -> float:
    return sum(
        entry.sets * catalogue.profile(entry.exercise).spinal_load
        for session in plan.sessions
        for entry in session.exercises
    )


def covered(report) -> str:
    rows = [remark for remark in report.remarks if remark.criterion == "coverage"]
    return f"{sum(row.verdict == 'holds' for row in rows)}/{len(rows)}"


def row(name: str, plan: Plan, intake, problem, seconds: str, gap: str) -> None:
    report = audit(plan, intake)
    undeclared = len(report.misses)
    declared = report.count("misses") - undeclared
    print(
        f"{name:<38}{seconds:>6}{gap:>7}{undeclared:>8}{declared:>10}"
        f"{worth(plan, intake, problem):>9.3f}{covered(report):>9}{spinal_sets(plan):>8.1f}"
    )
    for remark in report.misses if seconds != "-" else ():
        print("    miss:", remark.criterion, remark.subject, remark.figure, remark.low, remark.high)


def main() -> None:
    print(
        f"{'intake / week':<38}{'s':>6}{'gap %':>7}{'misses':>8}{'declared':>10}{'growth':>9}"
        f"{'covered':>9}{'spine':>8}"
    )
    for path in sorted(FOLDER.glob("*.yaml")):
        intake = read_intake(path.read_text(encoding="utf-8"), path.name)
        started = time.perf_counter()
        found = design(intake)
        seconds = time.perf_counter() - started
        problem = problem_of(intake)
        gap = f"{100 * found.report.gap:.1f}"
        row(path.stem, found.plan, intake, problem, f"{seconds:.1f}", gap)
        for name, plan in ordinary_weeks(intake).items():
            row(f"    {name}", plan, intake, problem, "-", "-")
    print("growth: weighted, % a week, central; spine: sets weighted by spinal load")


if __name__ == "__main__":
    main()
