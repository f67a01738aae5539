"""A rehearsal as text: the session on the clock, set by set."""

from __future__ import annotations

from setwright.documents.units import load_words
from setwright.exercises import catalogue
from setwright.plan.week import Plan, Session
from setwright.rehearsal.model import Rehearsal, RehearsedSession

HEAD = (
    f"  {'clock':>6}  {'exercise':<32} {'set':<5} {'load':>9} {'reps':>5} {'able':>11} "
    f"{'left':>5} {'rest':>6} {'needed':>7}"
)


def clock(seconds: float) -> str:
    """Minutes and seconds, for example ``12:05``."""
    whole = round(seconds)
    return f"{whole // 60}:{whole % 60:02d}"


def rehearsal_text(plan: Plan, rehearsal: Rehearsal) -> str:
    """The week, session by session.

    Columns: clock at the start of the set, exercise, set number (W for a warm-up set), load,
    repetitions to do, repetitions the person will be able to do with an 80 % interval, what is
    then really left in reserve, the rest that follows, and the rest that keeps performance.
    """
    blocks = [
        _session(plan, session, lived)
        for session, lived in zip(plan.sessions, rehearsal.sessions, strict=True)
    ]
    legend = (
        "able: repetitions to failure at that point, with the 80 % interval between people; "
        "left: what is really in\nreserve; needed: rest before the set that keeps performance; "
        "W: warm-up set"
    )
    return "\n\n".join([*blocks, legend])


def _session(plan: Plan, session: Session, lived: RehearsedSession) -> str:
    minutes = "" if session.minutes is None else f" of {session.minutes} to be had"
    lines = [
        f"{session.day.capitalize()}: {session.name}",
        f"  {lived.total_s / 60:.0f} min (80 % interval {lived.low_s / 60:.0f} to "
        f"{lived.high_s / 60:.0f}){minutes}: working {lived.working_s / 60:.0f}, resting "
        f"{lived.resting_s / 60:.0f}, warming up {lived.warm_up_s / 60:.0f}, changing over "
        f"{lived.changing_s / 60:.0f}",
        HEAD,
    ]
    rows: list[tuple[float, str]] = []
    for entry, ramp in lived.warm_up:
        name = catalogue.exercise(session.exercises[entry].exercise).name
        load = (
            f"{ramp.of_working:.0%}"
            if ramp.load_kg is None
            else load_words(ramp.load_kg, plan.unit)
        )
        rows.append(
            (
                ramp.start_s,
                f"  {clock(ramp.start_s):>6}  {name[:32]:<32} {'W':<5} {load:>9} "
                f"{ramp.reps:>5} {'':>11} {'':>5} {clock(ramp.rest_s):>6}",
            )
        )
    for one in lived.sets:
        item = session.exercises[one.entry]
        name = catalogue.exercise(item.exercise).name
        letter = f" {item.superset}" if item.superset else ""
        load = (
            f"{one.fraction:.0%} 1RM" if one.load_kg is None else load_words(one.load_kg, plan.unit)
        )
        able = f"{one.possible:.0f} ({one.possible_low:.0f}-{one.possible_high:.0f})"
        rest = clock(one.rest_s) if one.rest_s else ""
        needed = clock(one.rest_needed_s) if one.rest_needed_s else ""
        rows.append(
            (
                one.start_s,
                f"  {clock(one.start_s):>6}  {name[:32]:<32} {f'{one.number}{letter}':<5} "
                f"{load:>9} {one.reps:>5} {able:>11} {one.rir_real:>5.1f} {rest:>6} {needed:>7}",
            )
        )
    lines += [text for _, text in sorted(rows, key=lambda row: row[0])]
    return "\n".join(lines)
