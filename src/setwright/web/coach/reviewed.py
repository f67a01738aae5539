"""Reviews of clients, kept as long as nothing they stand on changes."""

from __future__ import annotations

from collections.abc import Hashable
from datetime import date, timedelta

from setwright.plan.client_folder import ClientFolder
from setwright.training.client import Client as Trained
from setwright.training.client import client_on
from setwright.training.review import Review, review, with_decisions
from setwright.web.coach.content import Content
from setwright.web.memory import Kept

_REVIEWS: Kept[Review] = Kept(96)
_TRAINED: Kept[Trained] = Kept(96)


def review_of(folder: ClientFolder, content: Content, monday: date, today: date) -> Review:
    """The review of a week as it shows on a day."""
    day = max(min(monday + timedelta(6), today), monday)
    key = (_key(content), monday, day)
    return _REVIEWS.of(key, lambda: review(folder, monday, today))


def after_decision(found: Review, before: Content, folder: ClientFolder, now: Content) -> None:
    """Let a review go on after a decision on it, where nothing else changed meanwhile.

    Args:
        found: the review that was decided on.
        before: what it was computed from.
        folder: with the decision.
        now: what the folder was read from.
    """
    if (now.intake, now.log, _sent(now)) == (before.intake, before.log, _sent(before)):
        key = (_key(now), found.facts.monday, found.facts.day)
        _REVIEWS.of(key, lambda: with_decisions(found, folder.decisions))


def trained_on(folder: ClientFolder, content: Content, today: date) -> Trained:
    """A client as the log shows them at the end of a day."""
    return _TRAINED.of((_key(content), today), lambda: client_on(folder, today))


def _key(content: Content) -> Hashable:
    """Without the drafts, which the engine does not see."""
    return content.client, content.intake, content.log, content.decisions, _sent(content)


def _sent(content: Content) -> Hashable:
    return tuple((week.starts, week.sent) for week in content.weeks if week.sent is not None)
