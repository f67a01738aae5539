"""The demo's log: records a review can read, with something to find in them."""

from importlib.resources import files
from itertools import pairwise
from pathlib import Path

import pytest

from setwright.lab.demo_log import demo_log
from setwright.plan.log import Missed, Replaced, SetRecord, Skipped, Withdrawn, log_of
from setwright.plan.read import read_intake, read_plan
from setwright.training.from_log import done_sets

SCENARIO = files("setwright.cli.scenario").joinpath("intake.yaml")
# A week designed for that intake.
WEEK = Path(__file__).with_name("week.yaml")


@pytest.fixture(scope="module")
def client():
    intake = read_intake(SCENARIO.read_text(encoding="utf-8"), "intake.yaml")
    return intake, read_plan(WEEK.read_text(encoding="utf-8"), WEEK.name)


@pytest.fixture(scope="module")
def records(client):
    return demo_log(*client)


def test_same_seed_same_log(client, records):
    assert demo_log(*client) == records
    assert demo_log(*client, seed=2) != records


def test_ids_are_unique_and_time_does_not_run_back(records):
    assert len({record.id for record in records}) == len(records)
    times = [record.at for record in records if not isinstance(record, Withdrawn)]
    assert times == sorted(times)


def test_there_is_something_to_find(records):
    log = log_of(records)
    sets = log.sets()
    assert sum(isinstance(record, Missed) for record in records) == 2
    assert sum(isinstance(record, Skipped) for record in records) == 1
    (replaced,) = [record for record in records if isinstance(record, Replaced)]
    assert any(one.exercise == replaced.by for one in sets)
    assert sum(one.pain is not None for one in sets) == 1
    assert any(one.rir is None for one in sets)
    (taken_back,) = [record for record in records if isinstance(record, Withdrawn)]
    assert taken_back.of not in log.standing_ids()


def test_one_load_is_in_the_wrong_unit(records):
    by_exercise: dict[str, list[SetRecord]] = {}
    for one in log_of(records).sets():
        by_exercise.setdefault(one.exercise, []).append(one)
    odd = [
        one.load_kg / later.load_kg
        for sets in by_exercise.values()
        for one, later in pairwise(sets)
        if later.load_kg > 0 and one.load_kg / later.load_kg > 1.9
    ]
    assert len(odd) == 1
    assert odd[0] == pytest.approx(2.2046, abs=0.05)


def test_the_estimate_can_read_all_of_it(client, records):
    found = done_sets(log_of(records), client[0])
    assert len(found) == sum(one.reps > 0 for one in log_of(records).sets())


def test_strength_grows(records):
    lifts = [one for one in log_of(records).sets() if one.exercise == "barbell-row"]

    def worth(sets):
        """Load and all repetitions there were in one figure (from memory: a thirtieth each)."""
        return sum(one.load_kg * (1 + (one.reps + (one.rir or 0)) / 30) for one in sets) / len(sets)

    assert worth(lifts[-4:]) > 1.02 * worth(lifts[:4])
