"""Random and mutated documents, a short run of ``benchmarks/fuzz_documents.py``."""

import importlib.util
from pathlib import Path

import pytest

PROJECT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def fuzz():
    spec = importlib.util.spec_from_file_location(
        "fuzz_documents", PROJECT / "benchmarks" / "fuzz_documents.py"
    )
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_documents_are_refused_with_a_message_or_hold_everything_they_promise(fuzz):
    counts, failures = fuzz.run(600, seed=20, with_audit=False)
    assert failures == []
    assert sum(counts.values()) == 600
    for kind in fuzz.KINDS:
        assert counts[kind, "mutated", "accepted"] > 20
        assert counts[kind, "mutated", "refused"] > 20


def test_accepted_documents_are_audited_without_an_exception(fuzz):
    _, failures = fuzz.run(60, seed=21)
    assert failures == []


def test_a_plan_far_too_heavy_for_the_person_is_audited(fuzz):
    heavy = fuzz.example("intake").replace("75 kg x 7 @ 1", "15 kg x 7 @ 1")
    assert heavy != fuzz.example("intake")
    fuzz.check_intake(heavy, with_audit=True)
