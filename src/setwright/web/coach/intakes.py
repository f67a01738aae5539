"""Intakes kept: every save a version, none over another that came meanwhile."""

from __future__ import annotations

from dataclasses import dataclass

from django.db import transaction

from setwright.plan.intake import Intake
from setwright.plan.read import read_intake
from setwright.plan.update_intake import update_intake
from setwright.plan.write import intake_data, write_intake
from setwright.web import trail
from setwright.web.engine.folder import intake_of
from setwright.web.models import Account, Client, IntakeVersion

NAME_MOST = 60


class SavedMeanwhileError(Exception):
    """Another version was saved since the one that was edited; nothing was kept."""

    def __init__(self, version: IntakeVersion) -> None:
        super().__init__("another version was saved meanwhile")
        self.version = version


@dataclass(frozen=True)
class Difference:
    """One field in which two intakes differ, as their documents have it."""

    field: str
    theirs: str
    ours: str


def latest(client: Client) -> IntakeVersion | None:
    """The version that counts; None before the first."""
    return client.intakes.select_related("made_by").order_by("-number").first()


def keep(client: Client, base: int, who: Account, intake: Intake) -> IntakeVersion:
    """Keep an intake as a new version, written in the hand of the one before.

    Raises:
        SavedMeanwhileError: when another version than ``base`` counts by now.
    """
    with transaction.atomic():
        before = _unchanged(client, base)
        if before is not None and intake_of(before.text) == intake:
            return before
        text = write_intake(intake) if before is None else update_intake(before.text, intake)
        return _add(client, base + 1, who, text, intake)


def keep_text(client: Client, base: int, who: Account, text: str) -> IntakeVersion:
    """Keep a whole document as a new version.

    Raises:
        DocumentError: when it is no intake.
        SavedMeanwhileError: when another version than ``base`` counts by now.
    """
    intake = read_intake(text, "intake.yaml")
    with transaction.atomic():
        before = _unchanged(client, base)
        if before is not None and before.text == text:
            return before
        return _add(client, base + 1, who, text, intake)


def differences(theirs: Intake, ours: Intake) -> list[Difference]:
    """Fields in which two intakes differ; answers of the screening and aims one by one."""
    first, second = _flat(theirs), _flat(ours)
    return [
        Difference(name, first.get(name, "nothing"), second.get(name, "nothing"))
        for name in dict.fromkeys((*first, *second))
        if first.get(name) != second.get(name)
    ]


def _flat(intake: Intake) -> dict[str, str]:
    found = {}
    for key, value in intake_data(intake).items():
        inside = value.items() if isinstance(value, dict) else [("", value)]
        for name, one in inside:
            label = f"{key.replace('_', ' ')}: {name.replace('_', ' ')}" if name else key
            found[label.replace("_", " ")] = _words(one)
    return found


def _words(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, dict):
        return ", ".join(f"{key} {_words(one)}" for key, one in value.items())
    if isinstance(value, list | tuple):
        return "; ".join(_words(one) for one in value) or "nothing"
    return f"{value:g}" if isinstance(value, float) else str(value)


def _unchanged(client: Client, base: int) -> IntakeVersion | None:
    Client.objects.select_for_update().get(pk=client.pk)
    now = latest(client)
    if now is not None and now.number != base:
        raise SavedMeanwhileError(now)
    return now


def _add(
    client: Client, number: int, who: Account, text: str, intake: Intake
) -> IntakeVersion:  # fmt: skip
    version = IntakeVersion.objects.create(client=client, number=number, text=text, made_by=who)
    if client.name != intake.name[:NAME_MOST]:
        client.name = intake.name[:NAME_MOST]
        client.save(update_fields=["name"])
        Account.objects.filter(client=client).update(name=client.name)
    trail.note(who, client, "changed", f"intake v{number}")
    return version
