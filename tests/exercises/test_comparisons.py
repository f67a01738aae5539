"""The published comparisons are sound, and the computed profiles reproduce them."""

from __future__ import annotations

import importlib.util
import sys
from pathlib import Path
from types import ModuleType

import pytest

from setwright.documents.errors import DocumentError
from setwright.documents.knowledge import read_folder
from setwright.exercises.comparing import figure, outcome
from setwright.exercises.comparisons import (
    Comparison,
    ComparisonFile,
    Side,
    comparisons,
    unexpressed,
    volumes,
)
from setwright.exercises.movements import movement
from setwright.sources.library import findings

ROOT = Path(__file__).parents[2]
# Share of the published relations that the computed profiles reproduce, at least.
REACHED = {"growth and imaging": 0.75, "moments": 0.75, "all": 0.70}
LONGITUDINAL = ("longitudinal", "acute imaging")
PAIR = ("back-squat", "leg-extension")
ONE = {"id": "one", "finding": "none", "confidence": "invented", "kind": "longitudinal"}


def test_there_are_enough_of_every_kind() -> None:
    kinds = [one.kind for one in comparisons()]
    assert len(kinds) >= 250
    assert sum(kind in LONGITUDINAL for kind in kinds) >= 100
    assert kinds.count("moment") >= 40
    assert sum(one.relation in ("=", "about 0") for one in comparisons()) >= 50


def test_every_finding_is_in_the_library() -> None:
    known = findings()
    named = {one.finding for one in comparisons()} | {one.finding for one in unexpressed()}
    assert sorted(name for name in named if name not in known) == []


def test_every_part_is_in_the_atlas() -> None:
    for one in comparisons():
        for side in one.sides:
            assert len(volumes(side.parts)) >= len(side.parts)
            assert len(volumes(side.over)) >= len(side.over)


def test_an_unknown_part_is_named() -> None:
    with pytest.raises(KeyError, match="gluteus-magnus"):
        volumes(("gluteus-magnus",))


def test_every_movement_is_declared() -> None:
    names = {name for one in comparisons() for side in one.sides for name in side.does}
    missing = []
    for name in sorted(names):
        try:
            movement(name)
        except KeyError as error:
            missing.append(str(error))
    assert missing == []


def test_measured_growth_agrees_with_the_relation() -> None:
    for one in comparisons():
        if one.right is None or not one.measured:
            continue
        left, right = one.left.measured_percent, one.right.measured_percent
        assert left is not None
        assert right is not None
        if one.relation == ">":
            assert left > right, one.id
        else:
            # Trials that found no difference still measured one; the largest here is 4 points.
            assert abs(left - right) <= 4, one.id


def test_the_right_side_takes_over_what_it_does_not_say() -> None:
    found = Comparison.model_validate(
        {
            **ONE,
            "quantity": "growth",
            "left": {"does": "back-squat", "parts": "soleus", "measured_percent": 5},
            "relation": ">",
            "right": {"does": "front-squat"},
        }
    )
    assert found.right == Side(does=("front-squat",), parts=("soleus",))
    assert not found.measured


@pytest.mark.parametrize(
    "wrong",
    [
        {"relation": "> 0", "right": {"parts": "soleus"}},
        {"relation": ">"},
        {"relation": "> 0", "quantity": "arm"},
        {"relation": "> 0", "calibrates": True},
    ],
)
def test_half_a_comparison_is_refused(wrong: dict[str, object]) -> None:
    whole = {"quantity": "growth", "left": {"does": "back-squat", "parts": "gracilis"}}
    Comparison.model_validate({**ONE, **whole, "relation": "> 0"})
    with pytest.raises(ValueError, match="one"):
        Comparison.model_validate({**ONE, **whole, **wrong})


def test_volumes_of_a_whole_muscle_are_split_evenly() -> None:
    triceps = volumes(("triceps",))
    assert len(triceps) == 3
    assert len(set(triceps.values())) == 1
    # Means weighted by volume must not count the biceps twice beside the brachialis.
    assert sum(volumes(("biceps",)).values()) == pytest.approx(144)


def test_a_file_of_another_kind_is_refused(tmp_path: Path) -> None:
    (tmp_path / "one.yaml").write_text("setwright: comparisons/2\n", encoding="utf-8")
    with pytest.raises(DocumentError, match=r"one\.yaml"):
        read_folder(tmp_path, ComparisonFile)


def test_exercises_done_together_add_up() -> None:
    alone = [figure("growth", Side(does=(n,), parts=("quadriceps",))) for n in PAIR]
    both = figure("growth", Side(does=PAIR, parts=("quadriceps",)))
    assert both == pytest.approx(sum(alone))


def test_a_comparison_turned_round_is_missed() -> None:
    turned = Comparison(
        id="turned",
        finding="none",
        kind="longitudinal",
        quantity="growth",
        left=Side(does=("back-squat",), parts=("hamstrings",)),
        relation=">",
        right=Side(does=("back-squat",), parts=("vastus-lateralis",)),
        confidence="invented",
    )
    assert not outcome(turned).reproduced


def _script() -> ModuleType:
    path = ROOT / "scripts" / "profiles_against_trials.py"
    spec = importlib.util.spec_from_file_location("profiles_against_trials", path)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module
    spec.loader.exec_module(module)
    return module


@pytest.fixture(scope="module")
def script() -> ModuleType:
    return _script()


def test_published_relations_are_reproduced(script: ModuleType) -> None:
    done, left = script.held()
    assert [one.id for one, _ in left] == []
    kinds = {
        "growth and imaging": LONGITUDINAL,
        "moments": ("moment", "length"),
        "all": (*LONGITUDINAL, "moment", "length", "activity"),
    }
    for name, wanted in kinds.items():
        mine = [one.reproduced for one in done if one.comparison.kind in wanted]
        assert sum(mine) / len(mine) >= REACHED[name], name


def test_every_miss_has_its_reason(script: ModuleType) -> None:
    done, _ = script.held()
    missed = {one.comparison.id for one in done if not one.reproduced}
    reasons = {one.id for one in comparisons() if one.reason}
    assert sorted(missed - reasons) == []
    assert sorted(reasons - missed) == []


def test_the_document_is_what_the_script_writes(script: ModuleType) -> None:
    assert script.OUT.read_text(encoding="utf-8") == script.text(), "run the script again"


def test_ranks_of_ties_are_shared(script: ModuleType) -> None:
    assert script.spearman([1, 2, 3, 4], [10, 20, 30, 40]) == pytest.approx(1)
    assert script.spearman([1, 2, 3, 4], [4, 3, 2, 1]) == pytest.approx(-1)
    # Ranks 1.5, 1.5, 3 against 1, 2, 3: worked by hand.
    assert script.spearman([5, 5, 9], [1, 2, 3]) == pytest.approx(0.8660254)
