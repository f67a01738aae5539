"""Designs under way: each in a process of its own, watched by a thread, ended by a word."""

from __future__ import annotations

import json
from datetime import timedelta

from django.db import transaction
from django.utils import timezone

from setwright.plan.write import write_plan
from setwright.web import trail
from setwright.web.board import history, locks
from setwright.web.board.design_watch import Order, Outcome, ended, watching
from setwright.web.engine.folder import intake_text, plan_of
from setwright.web.models import Account, DesignJob, Week

# A job that no watcher has seen for so long has lost its server.
LOST_AFTER = timedelta(seconds=30)
NO_INTAKE = "There is no intake yet to design from."


def begin(week: Week, who: Account, seconds: float) -> DesignJob | None:
    """Begin to design a week around what is locked; the one that runs already when one does.

    Returns:
        The job, or None when there is no intake.
    """
    with transaction.atomic():
        now = history.held(week)
        running = now.jobs.filter(state=DesignJob.State.RUNNING).first()
        if running is not None and not lost(running):
            return running
        intake = intake_text(now.client)
        if intake is None:
            return None
        kept = locks.kept_part(plan_of(now.current.text), now.locked) if now.current else None
        count = sum(len(one.exercises) for one in kept.sessions) if kept else 0
        said = "designed from the intake" + (f" around {count} locked" if count else "")
        order = Order(intake, write_plan(kept) if kept else "", seconds, said)
        job = DesignJob.objects.create(
            week=now, base=now.current, asked_by=who, message="beginning"
        )
        trail.note(who, now.client, "designs", f"week {now.starts}")
        transaction.on_commit(lambda: watching(job.pk, order))
    return job


def cancel(job: DesignJob) -> None:
    """End a job; its watcher ends the process."""
    running = DesignJob.objects.filter(pk=job.pk, state=DesignJob.State.RUNNING)
    running.update(state=DesignJob.State.CANCELLED, message="", seen_at=timezone.now())


def lost(job: DesignJob) -> bool:
    """Whether a job's watcher is gone, as after a restart; the job is then marked as failed."""
    if job.state != DesignJob.State.RUNNING or timezone.now() - job.seen_at < LOST_AFTER:
        return False
    ended(job.pk, DesignJob.State.FAILED, "The server was restarted meanwhile. Begin once more.")
    job.refresh_from_db()
    return True


def outcome_of(job: DesignJob | None) -> Outcome | None:
    """How a job ended that made a version; None otherwise."""
    if job is None or job.state != DesignJob.State.DONE:
        return None
    return Outcome(**json.loads(job.message))
