"""A client's documents, each as the command line reads it in a client's folder."""

from __future__ import annotations

from collections.abc import Iterable

from setwright.plan.client_folder import DECISIONS, INTAKE, LOG, PLANS
from setwright.web.coach.content import Content
from setwright.web.engine.folder import intake_text
from setwright.web.models import Client


def paths(content: Content) -> list[str]:
    """Paths inside the folder; plans are those that were sent."""
    plans = [f"{PLANS}/{week.starts}.yaml" for week in content.weeks if week.sent is not None]
    return [*([INTAKE] if content.intake else []), *plans, LOG, DECISIONS]


def document(client: Client, path: str) -> str | None:
    """The text of a document; None when there is no such one."""
    if path == INTAKE:
        return intake_text(client)
    if path == LOG:
        return _lines(client.log.values_list("text", flat=True))
    if path == DECISIONS:
        return _lines(client.decisions.values_list("text", flat=True))
    for starts, text in client.weeks.filter(sent__isnull=False).values_list("starts", "sent__text"):
        if path == f"{PLANS}/{starts}.yaml":
            found: str = text
            return found
    return None


def _lines(texts: Iterable[str]) -> str:
    return "".join(f"{text}\n" for text in texts)
