"""Why so many sets and repetitions, so near to failure, with so much rest."""

from __future__ import annotations

from setwright.anatomy.atlas import index, muscles, part
from setwright.audit.context import Context, Placed
from setwright.audit.criteria.frequency import COUNTS_FROM
from setwright.exercises import catalogue
from setwright.handout.explained import Said
from setwright.handout.wording import counted, number, rest_words, span
from setwright.plan.limits import rir_floor

# Above this many repetitions a lifter's call of what is left gets poor.
POOR_CALLS_FROM = 12


def dose(context: Context, item: Placed) -> list[Said]:
    """Sets, repetitions, effort and rest, in this order."""
    return [_sets(context, item), _reps(item), _effort(context, item), _rest(context, item)]


def _sets(context: Context, item: Placed) -> Said:
    profile = catalogue.profile(item.exercise.id)
    lead = part(profile.limiting[0] if profile.limiting else profile.shares[0].part)
    columns = [index()[ident] for ident in index() if part(ident).muscle == lead.muscle]
    by_session = context.response.session_sets[:, columns].max(axis=1)
    times = int((by_session >= COUNTS_FROM).sum())
    words = (
        f"{counted(item.entry.sets, 'set')}: with the rest of the week "
        f"{muscles()[lead.muscle].name} comes to {number(round(float(by_session.sum()), 1))} "
        f"fractional sets on {counted(times, 'day')}, "
        f"{number(round(float(by_session[item.session]), 1))} of them in this session."
    )
    return Said(
        "sets",
        words,
        (
            "practice-sets-per-session",
            "session-volume-puos-2025",
            "weekly-volume-frequency-meta-regression-2024",
        ),
    )


def _reps(item: Placed) -> Said:
    low, high = item.entry.reps
    band = span(low, high, " to ")
    sources = ["practice-rep-range", "low-vs-high-load-meta-2017"]
    if item.exercise.kind == "compound":
        words = f"{band} repetitions: a compound is done heavier, before breath ends the set."
        sources += ["practice-compound-heavier", "practice-high-reps-compounds"]
    else:
        words = f"{band} repetitions: an isolation is done lighter."
        sources += ["practice-compound-heavier"]
    if high > POOR_CALLS_FROM:
        words += (
            f" Above {POOR_CALLS_FROM} a lifter's call of what is left gets poor, so end by feel "
            "of the last repetitions."
        )
        sources += ["rir-accuracy-meta-2022"]
    return Said("reps", words, tuple(sources))


def _effort(context: Context, item: Placed) -> Said:
    first, last = item.entry.rir
    sources = ["practice-effort-course", "rir-meta-regression-2024"]
    if item.entry.sets == 1 or first == last:
        words = f"Leave {counted(first, 'repetition')} in reserve."
    else:
        words = (
            f"Leave {counted(first, 'repetition')} in reserve on the first set and {number(last)} "
            "on the last: the early sets keep strength for the late ones."
        )
    floor = rir_floor(context.intake, item.exercise)
    if floor.rir > 0:
        words += f" No closer to failure than {number(floor.rir)}: {floor.because}."
        sources += [*floor.evidence, "failure-cost-low"]
    return Said("effort", words, tuple(sources))


def _rest(context: Context, item: Placed) -> Said:
    sets = context.rehearsed(item)
    rest = rest_words(item.entry.rest_s, " to ")
    if len(sets) < 2:
        return Said("rest", f"One set, so rest serves what follows: {rest}.", ("practice-rest",))
    words = (
        f"Rest {rest}. The rehearsal expects about {sets[0].possible:.0f} repetitions to failure "
        f"on the first set and {sets[-1].possible:.0f} on the last; rest longer when repetitions "
        "fall off faster."
    )
    return Said("rest", words, ("practice-rest", "rest-hypertrophy-bayes-meta-2024"))
