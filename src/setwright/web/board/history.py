"""Versions of a week: each edit a new one, undo and redo along their line, no edit lost."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from django.db import transaction

from setwright.plan.week import Plan
from setwright.plan.write import write_plan
from setwright.web import trail
from setwright.web.board import locks
from setwright.web.engine.folder import plan_of, text_of
from setwright.web.models import Account, PlanVersion, Week


@dataclass(frozen=True)
class Made:
    """A version that was made.

    Attributes:
        version: the version.
        current: whether it is on the board now. It is not when someone changed the week
            meanwhile: then both are kept.
        since: what the others made after the version that was edited.
    """

    version: PlanVersion
    current: bool
    since: tuple[PlanVersion, ...] = ()


class StaleError(Exception):
    """Someone changed the week meanwhile; nothing was done."""

    def __init__(self, since: tuple[PlanVersion, ...]) -> None:
        super().__init__("the week was changed meanwhile")
        self.since = since


def held(week: Week) -> Week:
    """The week as it stands now, held until the transaction ends."""
    return (
        Week.objects.select_for_update(of=("self",))
        .select_related("current", "client")
        .get(pk=week.pk)
    )


def edit(week: Week, base: int, who: Account, change: Callable[[Plan], tuple[Plan, str]]) -> Made:
    """Make an edit and keep it as a version.

    Args:
        week: the week.
        base: number of the version the edit was made on.
        who: who made it.
        change: gives the new plan and what was done; what it raises undoes everything.
    """
    with transaction.atomic():
        now = held(week)
        current = now.current
        on = current if current and current.number == base else _numbered(now, base)
        plan, said = change(plan_of(on.text))
        version = _keep(now, text_of(plan), on, said, who)
        if on is not current:
            return Made(version, False, since(now, base, version))
        _show(now, version, plan_of(on.text), plan)
        return Made(version, True)


def put(week: Week, base: int | None, who: Account | None, plan: Plan, said: str) -> Made:
    """Keep a whole plan as a version, on the board if nothing changed since ``base``."""
    text = write_plan(plan)
    if plan_of(text) != plan:
        raise ValueError("a plan that does not read back as it was written")
    with transaction.atomic():
        now = held(week)
        on = None if base is None else _numbered(now, base)
        version = _keep(now, text, on, said, who)
        if (now.current and now.current.number) != base:
            return Made(version, False, since(now, base or 0, version))
        _show(now, version, plan_of(on.text) if on else None, plan)
        return Made(version, True)


def undo(week: Week, base: int, who: Account) -> PlanVersion | None:
    """Go back to the version before.

    Returns:
        The version taken back, or None when there is nothing before it.

    Raises:
        StaleError: when someone changed the week meanwhile.
    """
    with transaction.atomic():
        now = _unchanged(week, base)
        taken = now.current
        if taken is None or taken.parent_id is None:
            return None
        now.undone = [*now.undone, taken.pk]
        now.current_id = taken.parent_id
        now.save(update_fields=["undone", "current"])
        trail.note(who, now.client, "undid", f"week {now.starts} version {taken.number}")
        return taken


def redo(week: Week, base: int, who: Account) -> PlanVersion | None:
    """Do again what was taken back last.

    Returns:
        The version that is on the board again, or None when nothing was taken back.

    Raises:
        StaleError: when someone changed the week meanwhile.
    """
    with transaction.atomic():
        now = _unchanged(week, base)
        if not now.undone:
            return None
        *left, last = now.undone
        version = now.versions.get(pk=last)
        now.undone, now.current = left, version
        now.save(update_fields=["undone", "current"])
        trail.note(who, now.client, "redid", f"week {now.starts} version {version.number}")
        return version


def since(week: Week, base: int, own: PlanVersion | None = None) -> tuple[PlanVersion, ...]:
    """Versions made after a version, without one's own."""
    found = week.versions.filter(number__gt=base).select_related("made_by")
    return tuple(one for one in found if own is None or one.pk != own.pk)


def _unchanged(week: Week, base: int) -> Week:
    now = held(week)
    if now.current is None or now.current.number != base:
        raise StaleError(since(now, base))
    return now


def _numbered(week: Week, number: int) -> PlanVersion:
    return week.versions.get(number=number)


def _keep(
    week: Week, text: str, parent: PlanVersion | None, said: str, who: Account | None
) -> PlanVersion:
    last = week.versions.order_by("-number").values_list("number", flat=True).first() or 0
    version = PlanVersion.objects.create(
        week=week, number=last + 1, text=text, parent=parent, what=said[:200], made_by=who
    )
    trail.note(who or "the designer", week.client, "changed", f"week {week.starts} v{last + 1}")
    return version


def _show(week: Week, version: PlanVersion, before: Plan | None, after: Plan) -> None:
    week.current, week.undone = version, []
    if before is not None:
        week.locked = locks.following(week.locked, before, after)
    week.save(update_fields=["current", "undone", "locked"])
