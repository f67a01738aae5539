"""`setwright demo`: the main job on the embedded scenario."""

from __future__ import annotations

import json
import sys
import time
from importlib.resources import files
from pathlib import Path

import click

from setwright.cli.demo_client import CLIENT, WEEKS, trained
from setwright.documents.plain_data import plain

HELP = """Design, rehearse and audit a week for an invented person in an invented gym.

Writes the intake, the plan, the audit, the rehearsal, the explanation and the pictures to a
folder; then lets the invented person train it for eight weeks, into a client's folder inside it,
and reviews the last one.

\b
Example:
  setwright demo demo
"""
PICTURES = (".svg", ".png")


@click.command("demo", help=HELP)
@click.argument("folder", type=click.Path(file_okay=False), default="demo")
def command(folder: str) -> None:
    """Run the demo."""
    from setwright.audit.audit import audit
    from setwright.design.design import design
    from setwright.documents.yaml_io import write_text
    from setwright.handout.audit_text import audit_text
    from setwright.handout.canvas_file import save_svg
    from setwright.handout.design_text import design_text
    from setwright.handout.dose_picture import TITLE, dose_picture
    from setwright.handout.explain import explain, explained_text
    from setwright.handout.rehearsal_picture import rehearsal_picture
    from setwright.handout.rehearsal_text import rehearsal_text
    from setwright.handout.week_picture import week_picture
    from setwright.handout.week_text import week_text
    from setwright.plan.read import read_intake, read_plan
    from setwright.plan.write import write_plan

    started = time.perf_counter()
    target = Path(folder)
    target.mkdir(parents=True, exist_ok=True)
    text = files("setwright.cli.scenario").joinpath("intake.yaml").read_text(encoding="utf-8")
    intake = read_intake(text, "the demo's intake")
    write_text(target / "intake.yaml", text)

    _step("designing the week")
    found = design(intake, progress=_step if sys.stderr.isatty() else None)
    write_text(target / "plan.yaml", write_plan(found.plan))
    # From here on the plan is read back from its document, as a coach's own plan would be.
    plan = read_plan((target / "plan.yaml").read_text(encoding="utf-8"), "plan.yaml")

    _step("rehearsing and auditing it")
    report = audit(plan, intake)
    week = week_text(plan, report.rehearsal, intake)
    written = {
        "week.txt": week,
        "design.txt": design_text(found),
        "audit.txt": audit_text(report, plan, show_all=True),
        "rehearsal.txt": rehearsal_text(plan, report.rehearsal),
        "explanation.txt": explained_text(explain(plan, intake), intake),
        "audit.json": json.dumps(plain({"remarks": report.remarks}), indent=2, ensure_ascii=False),
    }
    for name, content in written.items():
        write_text(target / name, content + "\n")

    _step("drawing")
    title = f"{plan.title}: {TITLE}"
    pictures = {
        "week": week_picture(plan, report.rehearsal),
        "parts": dose_picture(report.response, intake, title),
        "rehearsal": rehearsal_picture(plan, report.rehearsal),
    }
    for suffix in PICTURES:
        for name, drawn in pictures.items():
            save_svg(drawn, target / f"{name}{suffix}")

    _step(f"training it for {WEEKS} weeks, and reviewing the last")
    reviewed = trained(target / CLIENT, plan, intake, text)
    write_text(target / "review.txt", reviewed + "\n")

    click.echo(week)
    click.echo()
    click.echo(design_text(found))
    click.echo()
    click.echo(audit_text(report, plan, show_all=False))
    click.echo()
    click.echo(reviewed)
    names = ", ".join(sorted(path.name for path in target.iterdir()))
    click.echo(f"\n{time.perf_counter() - started:.0f} s; written to {target}/: {names}")
    click.echo(f"\nA whole practice in the browser: {sys.argv[0]} serve --demo")


def _step(words: str) -> None:
    click.echo(f"{words} ...", err=True)
