"""The rule against the directions of published trials; sources stand beside each direction."""

import importlib.util
from pathlib import Path

ROOT = Path(__file__).parents[2]


def _script():
    path = ROOT / "scripts" / "rule_against_trials.py"
    spec = importlib.util.spec_from_file_location("rule_against_trials", path)
    module = importlib.util.module_from_spec(spec)
    import sys

    sys.modules[spec.name] = module
    spec.loader.exec_module(module)
    return module


SCRIPT = _script()


def test_at_least_seven_in_ten_published_directions_come_out():
    held = SCRIPT.compare()
    assert len(held) >= 25
    misses = [one.direction for one in held if not one.reproduced]
    assert 1 - len(misses) / len(held) >= 0.7, misses


def test_the_listed_misses_are_the_misses():
    assert SCRIPT.OUT.read_text(encoding="utf-8") == SCRIPT.text()
