"""Open and closed loop on a few lifters: same seed, same answer; luck shared by the coaches."""

import json
from dataclasses import asdict

import numpy as np
import pytest
from click.testing import CliRunner

from setwright.handout.lab_text import lab_text
from setwright.lab.baselines import BASELINES, LogBook
from setwright.lab.closed_loop import COACHES, run_closed
from setwright.lab.open_loop import run_open
from setwright.lab.report import figure
from setwright.lab.run import live, run_lab
from setwright.training.done import DoneSet


@pytest.fixture(scope="module")
def report():
    return run_lab(8, 7, 1, check_people=20)


def test_same_seed_same_answer_on_any_number_of_processes(report):
    again = run_lab(8, 7, 1, jobs=2, check_people=20)
    assert asdict(again) == asdict(report)


def test_another_seed_another_answer():
    first, second = (run_open(np.random.SeedSequence(k), 4).errors for k in (1, 2))
    assert first.shape != second.shape or not np.array_equal(first, second)


def test_the_estimate_foretells_better_than_every_baseline(report):
    mine, *others = report.open_loop.rules
    assert [rule.name for rule in others] == list(BASELINES)
    assert all(mine.mae < 0.8 * rule.mae for rule in others)
    assert report.open_loop.lower_by.low > 0


def test_bias_is_judged_after_six_weeks_only(report):
    assert report.open_loop.bias is not None
    assert run_open(np.random.SeedSequence(1), 5).bias_of == {}


def test_the_coach_is_the_only_difference():
    opened, closed = live(1, 0, 4)
    assert opened.sets > 0
    assert len(closed) == len(COACHES)
    again = run_closed(np.random.SeedSequence([1, 1], spawn_key=(0,)), 4, COACHES[1])
    assert again == closed[1]


def test_heavier_every_week_ends_beyond_capacity():
    runs = {
        name: [run_closed(seed, 12, name) for seed in np.random.SeedSequence(4).spawn(6)]
        for name in ("1 % a week", "2 % a week")
    }
    slow, fast = (sum(run.beyond for run in of) for of in runs.values())
    assert fast > slow


def done(ident, day, number, load, reps, rir):
    return DoneSet(ident, day, 0.0, "leg-press", number, load, load, reps, rir, rir == 0, None)


def test_baselines_by_hand():
    book = LogBook()
    assert book.predict("leg-press", 1, 1, 100.0, 0.0) is None
    book.add(done("a", 1, 1, 100.0, 8, 2.0), 2.0)
    book.add(done("b", 1, 2, 100.0, 6, 0.0), 0.0)
    got = dict(zip(BASELINES, book.predict("leg-press", 1, 3, 100.0, 1.0), strict=True))
    assert got["equation, last set"] == pytest.approx(5.0)
    assert got["equation, same set last session"] == pytest.approx(9.0)
    assert got["equation, mean 1RM so far"] == pytest.approx(7.0)
    assert got["last result repeated"] == 6
    assert got["same set last session repeated"] == 8
    assert got["mean of the exercise"] == 7
    heavier = dict(zip(BASELINES, book.predict("leg-press", 1, 3, 110.0, 1.0), strict=True))
    assert heavier["equation, last set"] == pytest.approx(30 * (120 / 110 - 1) - 1)


def test_an_interval_by_hand():
    one = figure([1.0, 2.0, 3.0])
    assert one.mean == 2
    assert one.high - one.mean == pytest.approx(1.96 / 3**0.5, abs=1e-3)


def test_the_report_reads_as_tables(report):
    text = lab_text(report)
    for words in ("PUBLISHED FIGURES", "OPEN LOOP", "CLOSED LOOP", "Target", *COACHES, *BASELINES):
        assert words in text


def test_the_command_prints_json():
    from setwright.cli.commands.lab import command

    got = CliRunner().invoke(command, ["--lifters", "5", "--weeks", "4", "--jobs", "1", "--json"])
    assert got.exit_code == 0
    found = json.loads(got.stdout)
    assert found["lifters"] == 5
    assert {one["name"] for one in found["closed_loop"]} == set(COACHES)
