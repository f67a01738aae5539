"""One design watched: its process run, its progress kept, its plan taken as a version."""

from __future__ import annotations

import json
import logging
import queue
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any
from uuid import UUID

from django.db import DatabaseError, connection, transaction
from django.utils import timezone

from setwright.plan.read import read_plan
from setwright.web.board import history
from setwright.web.models import DesignJob

logger = logging.getLogger("setwright.web.designs")

# How often a watcher looks whether its job was cancelled.
TICK_S = 0.25
# A design takes about its seconds; one that takes this many times as long hangs.
MOST_TIMES, AND_S = 6, 60
# Designs at a time on one server; others wait.
AT_ONCE = 2
_SLOTS = threading.BoundedSemaphore(AT_ONCE)


@dataclass(frozen=True)
class Outcome:
    """How a job ended.

    Attributes:
        version: number of the version it made.
        aside: whether that is kept beside the board, because the week was changed meanwhile.
        words: how good the week is and what holds it back.
    """

    version: int
    aside: bool
    words: str


@dataclass(frozen=True)
class Order:
    """What is designed: intake and what is kept as documents, and what the version is called."""

    intake: str
    keep: str
    seconds: float
    said: str


def watching(job: UUID, order: Order) -> None:
    """Run a job beside everything else."""
    threading.Thread(target=_watch, args=(job, order), name=f"design {job}", daemon=True).start()


def _watch(job: UUID, order: Order) -> None:
    """Wait for a turn, then run the process until it ends or the job does."""
    try:
        while not _SLOTS.acquire(timeout=TICK_S):
            if not _alive(job, "waiting for another design to end", 0.0):
                return
        try:
            _run(job, order)
        finally:
            _SLOTS.release()
    except OSError:
        ended(job, DesignJob.State.FAILED, "The designer could not be started.")
    except DatabaseError:
        # Nobody can be told now; the job is found to be lost when someone looks.
        logger.exception("a design lost its database")
    finally:
        connection.close()


def _run(job: UUID, order: Order) -> None:
    process = subprocess.Popen(
        [sys.executable, "-m", "setwright.web.board.design_process"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
        encoding="utf-8",
    )
    try:
        assert process.stdin is not None
        what = {"intake": order.intake, "keep": order.keep, "seconds": order.seconds}
        process.stdin.write(json.dumps(what) + "\n")
        process.stdin.flush()
        _follow(job, order, process)
    finally:
        process.kill()
        process.wait()


def _follow(job: UUID, order: Order, process: subprocess.Popen[str]) -> None:
    begun, said = time.monotonic(), "beginning"
    for told in _told(process):
        if "plan" in told:
            _take(job, order, told)
            return
        if "fault" in told:
            ended(job, DesignJob.State.FAILED, str(told["fault"]))
            return
        said = str(told.get("say", said))
        spent = time.monotonic() - begun
        if not _alive(job, said, min(spent / order.seconds, 0.95)):
            return
        if spent > MOST_TIMES * order.seconds + AND_S:
            ended(job, DesignJob.State.FAILED, "The design took too long.")
            return
    ended(job, DesignJob.State.FAILED, "The designer ended without a plan.")


def _told(process: subprocess.Popen[str]) -> Iterator[dict[str, Any]]:
    """What the process tells; nothing every tick, and the end when it has gone."""
    lines: queue.Queue[str] = queue.Queue()

    def read() -> None:
        assert process.stdout is not None
        for line in process.stdout:
            lines.put(line)
        lines.put("")

    threading.Thread(target=read, daemon=True).start()
    while True:
        try:
            line = lines.get(timeout=TICK_S)
        except queue.Empty:
            yield {}
            continue
        if not line:
            return
        yield json.loads(line)


def _alive(job: UUID, said: str, progress: float) -> bool:
    """Keep the progress; whether the job still runs."""
    running = DesignJob.objects.filter(pk=job, state=DesignJob.State.RUNNING)
    return running.update(progress=progress, message=said, seen_at=timezone.now()) == 1


def ended(job: UUID, state: DesignJob.State, message: str) -> None:
    """Keep how a job ended, unless it has ended already."""
    running = DesignJob.objects.filter(pk=job, state=DesignJob.State.RUNNING)
    running.update(state=state, message=message[:4000], seen_at=timezone.now())


def _take(job: UUID, order: Order, told: dict[str, Any]) -> None:
    """Keep the plan as a version, unless the job was cancelled in the last moment."""
    plan = read_plan(told["plan"], "the design")
    with transaction.atomic():
        held = DesignJob.objects.select_for_update(of=("self",)).filter(pk=job).first()
        if held is None or held.state != DesignJob.State.RUNNING:
            return
        base = held.base.number if held.base else None
        made = history.put(held.week, base, held.asked_by, plan, order.said)
        ended = Outcome(made.version.number, not made.current, told["words"][:3000])
        held.state, held.progress = DesignJob.State.DONE, 1.0
        held.message = json.dumps(ended.__dict__)
        held.save(update_fields=["state", "progress", "message", "seen_at"])
