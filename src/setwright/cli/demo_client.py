"""The demo's client trains: a client's folder with eight weeks of log, and its review."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

from setwright.plan.intake import Intake
from setwright.plan.week import Plan

CLIENT = "client"
WEEKS = 8


def trained(folder: Path, plan: Plan, intake: Intake, intake_text: str) -> str:
    """Write the folder anew, draw what the log shows, and give the text of the last review.

    Args:
        folder: of the client; an earlier log of the demo in it is replaced.
        plan: the week that is trained.
        intake: of the client.
        intake_text: the document it was read from.
    """
    from setwright.documents.yaml_io import write_text
    from setwright.handout.done_picture import done_picture
    from setwright.handout.drawing import save
    from setwright.handout.review_text import review_text
    from setwright.handout.strength_picture import strength_lines, strength_picture
    from setwright.lab.demo_log import FIRST_MONDAY, demo_log
    from setwright.plan.client_folder import DECISIONS, INTAKE, LOG, PLANS, open_folder
    from setwright.plan.log_store import append_records
    from setwright.plan.write import write_plan
    from setwright.training.facts.attendance import weeks_kept
    from setwright.training.review import review
    from setwright.training.strength_now import strength_now

    (folder / PLANS).mkdir(parents=True, exist_ok=True)
    for old in (folder / LOG, folder / DECISIONS, *(folder / PLANS).glob("*.yaml")):
        old.unlink(missing_ok=True)
    write_text(folder / INTAKE, intake_text)
    write_text(folder / PLANS / f"{FIRST_MONDAY}.yaml", write_plan(plan))
    append_records(folder / LOG, demo_log(intake, plan, WEEKS))

    found = review(open_folder(folder), FIRST_MONDAY + timedelta(weeks=WEEKS - 1))
    client = found.facts.client
    lines = strength_lines(client, [row.exercise for row in strength_now(client)])
    weeks = weeks_kept(client, found.facts.monday, WEEKS)
    for suffix in (".svg", ".png"):
        save(strength_picture(f"{intake.name}: strength", lines), folder / f"strength{suffix}")
        save(done_picture(f"{intake.name}: planned and done", weeks), folder / f"done{suffix}")
    return review_text(found)
