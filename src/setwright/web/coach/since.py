"""What was reported after a week that is looked at: it must not wait for its own review."""

from __future__ import annotations

from datetime import date, timedelta

from setwright.plan.client_folder import ClientFolder
from setwright.training.facts.week import Facts
from setwright.web.coach.content import Content
from setwright.web.coach.reviewed import trained_on
from setwright.web.coach.standing import Need, complaints


def reported_since(
    folder: ClientFolder, content: Content, monday: date, today: date
) -> tuple[Need, ...]:
    """Stop signs and pain reported after a week, worst first."""
    sunday = monday + timedelta(6)
    if today <= sunday:
        return ()
    this = today - timedelta(today.weekday())
    now = Facts(trained_on(folder, content, today), this, folder.plan_on(this))
    return tuple(complaints(now, sunday + timedelta(1)))
