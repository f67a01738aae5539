"""The constants of the estimate of strength, read once from progress.json."""

from __future__ import annotations

import json
from dataclasses import dataclass
from importlib.resources import files


@dataclass(frozen=True)
class Constants:
    """Spreads, rates and priors; progress.json says where each comes from.

    Attributes:
        level_sd: SD of log 1RM of an exercise before its first set, about what its load says.
        first_reps: repetitions to failure that the load of a first set is expected to allow.
        level_walk: SD of the wandering of log 1RM, over a week.
        trend: gain of log 1RM a week by experience, person-wide mean.
        trend_sd: its SD between people.
        trend_weeks: time constant with which a person's gain returns to the mean.
        early: extra gain a week on an exercise that is new in the log.
        early_sd: its SD.
        early_weeks: time constant with which it fades.
        most_gap_days: longest gap over which gains are carried on.
        curve_sd: SD between people of the log curve constant, person-wide.
        curve_class_sd: the same, between classes of exercise of a person.
        curve_own_sd: the same, between exercises of a class.
        day_sd: SD of a day's log strength, common to all exercises.
        day_own_sd: the same, of one exercise.
        set_sd: SD of a single set's log strength.
        reps_sd: SD of a set's repetitions as a share of them.
        bias: real less felt repetitions in reserve, mean over people.
        bias_sd: its SD between people.
        bias_class_sd: its SD between classes of exercise of a person.
        bias_walk: SD of its wandering, over a week, repetitions.
        steeper: repetitions that the bias rises with each one felt in reserve, mean over people.
        steeper_sd: its SD between people.
        longer: repetitions that the bias rises with each one of the length of the set, mean.
        longer_sd: its SD between people.
        call_share: SD of one person's calls about their own bias, over that of people's calls.
        endurance_sd: SD between people of the log of the share that fatigue takes.
        tired_sd: SD from set to set of that share, as a share of it.
        unsaid_rir: repetitions left, median, when a set stopped short and nothing was said.
        seed_sd: further SD of log 1RM for a set remembered at the start.
        form_sd: SD of form, which comes and goes over weeks, common to all exercises.
        form_weeks: time constant of form.
        follow: share of a change of load from day to day that strength goes with, mean.
        follow_sd: its SD between people.
        jump: SD of log strength that a change of load brings, as a share of the log change.
        wide_share: share of sets that come from a distribution three times as wide.
        scatter_prior: sets' worth of belief that a person scatters like people in general.
        scatter_share: what a set of another exercise says about scatter, of one of its own.
        scatter_sets: memory of scatter, sets.
        odd_z: a set further off than this many SD is not believed at once.
    """

    level_sd: float
    first_reps: float
    level_walk: float
    trend: dict[str, float]
    trend_sd: float
    trend_weeks: float
    early: float
    early_sd: float
    early_weeks: float
    most_gap_days: float
    curve_sd: float
    curve_class_sd: float
    curve_own_sd: float
    day_sd: float
    day_own_sd: float
    set_sd: float
    reps_sd: float
    bias: float
    bias_sd: float
    bias_class_sd: float
    bias_walk: float
    steeper: float
    steeper_sd: float
    longer: float
    longer_sd: float
    call_share: float
    endurance_sd: float
    tired_sd: float
    unsaid_rir: float
    seed_sd: float
    form_sd: float
    form_weeks: float
    follow: float
    follow_sd: float
    jump: float
    wide_share: float
    scatter_prior: float
    scatter_share: float
    scatter_sets: float
    odd_z: float


def read(text: str, kind: str | None = None) -> Constants:
    """The constants out of the text of progress.json.

    Args:
        text: of the file.
        kind: of log whose own constants replace the general ones; None for none.
    """
    data = json.loads(text)
    entries = data["constants"] | (data["kinds of log"][kind]["constants"] if kind else {})
    return Constants(**{name: entry["value"] for name, entry in entries.items()})


def setting(kind: str | None = None) -> Constants:
    """The constants for a kind of log; None for any person's.

    Raises:
        KeyError: progress.json does not have this kind.
    """
    return read((files("setwright.training") / "progress.json").read_text(encoding="utf-8"), kind)


CONSTANTS = setting()
