"""What was reported after a week that is looked at: it must not wait for its own review."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, timedelta

from setwright.plan.client_folder import ClientFolder
from setwright.plan.symptoms import Symptom
from setwright.training.facts.week import Facts
from setwright.web.coach.content import Content
from setwright.web.coach.reviewed import trained_on
from setwright.web.coach.standing import STOP_RANK, Need, complaints


def reported_since(
    folder: ClientFolder, content: Content, monday: date, today: date, shown: Iterable[Symptom]
) -> tuple[Need, ...]:
    """Stop signs and pain reported after a week, worst first.

    Args:
        folder: of the client.
        content: it was read from.
        monday: of the week.
        today: the day to stand on.
        shown: stop signs that the review of the week shows already.
    """
    sunday = monday + timedelta(6)
    if today <= sunday:
        return ()
    this = today - timedelta(today.weekday())
    now = Facts(trained_on(folder, content, today), this, folder.plan_on(this))
    found = complaints(now, sunday + timedelta(1))
    return tuple(one for one in found if one.rank != STOP_RANK or set(now.symptoms) - set(shown))
