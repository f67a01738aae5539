"""Plans written after the importer: each with its reading before the first run, then kept here."""

import importlib.util
import sys
from pathlib import Path

import pytest

from setwright.plan.foreign.importing import import_plan
from setwright.plan.read import read_plan
from setwright.plan.write import write_plan

FOLDER = Path(__file__).parent / "imports_fresh"


def loaded(path: Path):
    """A module of a folder of plans, which is no package."""
    name = f"{path.parent.name}_{path.stem}"
    spec = importlib.util.spec_from_file_location(name, path)
    module = importlib.util.module_from_spec(spec)
    sys.modules[name] = module  # where dataclasses look themselves up
    spec.loader.exec_module(module)
    return module


expected = loaded(FOLDER.parent / "imports" / "expected.py")
workbooks = loaded(FOLDER / "workbooks.py")
PLANS = {path.name: path.read_bytes() for path in sorted(FOLDER.glob("[0-9]*"))
         if path.suffix != ".expected"}  # fmt: skip
PLANS |= {f"{stem}.xlsx": workbooks.built(stem) for stem in workbooks.BUILDERS}
# The least share of lines that must be read right over all (issue 5).
LEAST = 0.98


@pytest.fixture(scope="module")
def readings():
    return {name: import_plan(data, name) for name, data in PLANS.items()}


@pytest.mark.parametrize("name", PLANS)
def test_every_line_is_accounted_for(name, readings) -> None:
    reading = readings[name]
    places = [piece.place for piece in reading.pieces]
    assert len(set(places)) == len(places)
    assert not [piece for piece in reading.pieces if piece.why == "not read"]
    assert all(piece.why for piece in reading.attention)
    told = {line.place for line in expected.expectations(name.rsplit(".", 1)[0], FOLDER)}
    assert told <= set(places)
    if name.endswith(".txt") and not places[0].startswith("A"):
        lines = PLANS[name].decode().splitlines()
        assert places == [str(at) for at, line in enumerate(lines, 1) if line.strip()]


@pytest.mark.parametrize("name", PLANS)
def test_the_plan_that_is_read_is_a_plan(name, readings) -> None:
    plan = readings[name].plan
    assert plan is not None
    assert read_plan(write_plan(plan), "plan.yaml") == plan


def test_nearly_every_line_is_read_right(readings) -> None:
    outcomes = {
        f"{name} {line.place}: {line.reading}": expected.outcome(line, reading)
        for name, reading in readings.items()
        for line in expected.expectations(name.rsplit(".", 1)[0], FOLDER)
    }
    wrong = [line for line, outcome in outcomes.items() if outcome != "right"]
    assert len(wrong) <= (1 - LEAST) * len(outcomes), wrong
