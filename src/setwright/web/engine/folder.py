"""A client out of the database, as the engine knows one."""

from __future__ import annotations

from pathlib import Path

from setwright.plan.client_folder import ClientFolder
from setwright.plan.decision import Decision
from setwright.plan.intake import Intake
from setwright.plan.log import Log, Record
from setwright.plan.log_store import DECISIONS, RECORDS
from setwright.plan.read import read_intake, read_plan
from setwright.plan.week import Plan
from setwright.plan.write import write_plan
from setwright.web.memory import held
from setwright.web.models import Client

# Documents are never changed once they are kept, so their text is their key.
KEPT = 512


# Plans just written, on their way into the cache below.
_WRITTEN: dict[str, Plan] = {}


@held(KEPT)
def plan_of(text: str) -> Plan:
    """A plan from its text."""
    return _WRITTEN.pop(text, None) or read_plan(text, "plan.yaml")


def text_of(plan: Plan) -> str:
    """The text to keep of a plan, which is then not read again while it is fresh."""
    text = write_plan(plan)
    _WRITTEN[text] = plan
    plan_of(text)
    _WRITTEN.pop(text, None)
    return text


@held(KEPT)
def intake_of(text: str) -> Intake:
    """An intake from its text."""
    return read_intake(text, "intake.yaml")


@held(65_536)
def record_of(text: str) -> Record:
    """A record of a log from its text."""
    return RECORDS.validate_json(text, strict=True)


@held(4096)
def decision_of(text: str) -> Decision:
    """A decision from its text."""
    return DECISIONS.validate_json(text, strict=True)


def intake_text(client: Client) -> str | None:
    """The intake that counts; None before the first."""
    return client.intakes.order_by("-number").values_list("text", flat=True).first()


def folder_of(client: Client) -> ClientFolder | None:
    """Everything kept of a client; None before an intake is there. Only weeks that were sent."""
    text = intake_text(client)
    if text is None:
        return None
    weeks = client.weeks.filter(sent__isnull=False).values_list("starts", "sent__text")
    return ClientFolder(
        Path(str(client.uuid)),
        intake_of(text),
        tuple((starts, plan_of(plan)) for starts, plan in weeks),
        Log(tuple(record_of(one) for one in client.log.values_list("text", flat=True))),
        tuple(decision_of(one) for one in client.decisions.values_list("text", flat=True)),
    )
