from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.exercises import catalogue
from setwright.exercises.kit import from_kg, nearest_load, stock_of, to_kg
from setwright.exercises.model import Exercise

BOUNDED = {"derandomize": True, "max_examples": 100, "deadline": None}


@dataclass(frozen=True)
class Listed:
    kit: Any
    bar_kg: float | None = None
    plates_kg: tuple[float, ...] = ()
    from_kg: float | None = None
    to_kg: float | None = None
    step_kg: float | None = None
    loads_kg: tuple[float, ...] = ()
    unit: Literal["kg", "lb"] = "kg"
    pairs: bool = True


def lift(loading: str, *kit: tuple[str, ...]) -> Exercise:
    return Exercise.model_validate(
        {
            "id": "lift",
            "name": "lift",
            "pattern": "horizontal press",
            "kind": "compound",
            "actions": {"elbow extension": 1},
            "resistance": "free weight",
            "loading": loading,
            "kit": kit,
            "setup_s": 10,
            "stability": 0.5,
            "whole_body": 0.5,
            "rep_band": (5, 30),
            "cues": ("one", "two"),
        }
    )


PRESS = lift("barbell", ("barbell", "bench", "rack"))
BAR = (Listed("barbell", 20, (20, 10, 5, 2.5, 1.25)), Listed("bench"), Listed("rack"))


def test_pounds_are_exact() -> None:
    assert to_kg(1, "lb") == 0.45359237
    assert to_kg(45, "lb") == pytest.approx(20.41165665, abs=1e-8)
    assert from_kg(to_kg(135, "lb"), "lb") == pytest.approx(135, abs=1e-9)
    assert to_kg(2.5, "kg") == 2.5


def test_plates_a_side_heaviest_first() -> None:
    choice = nearest_load(PRESS, 87, stock_of("listed", BAR))
    assert choice.target_kg == 87
    assert choice.load_kg == 85
    assert choice.text == "20 kg empty + 20, 10, 2.5 kg a side"


def test_real_stock_is_bounded() -> None:
    gym = stock_of("listed", (Listed("barbell", 20, (5, 5)), *BAR[1:]))
    assert gym.loads(PRESS) == (20, 30, 40)


def test_round_down_unless_a_range_and_ties_go_down() -> None:
    gym = stock_of("listed", BAR)
    assert nearest_load(PRESS, 34.9, gym).load_kg == 32.5
    assert nearest_load(PRESS, 34.9, gym, "nearest").load_kg == 35
    assert nearest_load(PRESS, 33.75, gym, "nearest").load_kg == 32.5


def test_nothing_light_enough_is_said() -> None:
    choice = nearest_load(PRESS, 15, stock_of("listed", BAR))
    assert choice.load_kg is None
    assert "20 kg" in choice.text


def test_pounds_on_the_bar() -> None:
    stock = (Listed("barbell", 45, (45, 25, 10, 5, 2.5), unit="lb"), *BAR[1:])
    choice = nearest_load(PRESS, to_kg(137, "lb"), stock_of("listed", stock))
    assert choice.load_kg == pytest.approx(to_kg(135, "lb"))
    assert choice.text == "45 lb empty + 45 lb a side"


def test_dumbbells_stacks_and_bands() -> None:
    gym = stock_of("full gym")
    curl = lift("dumbbell pair", ("dumbbells",))
    assert nearest_load(curl, 13.9, gym).text == "12 kg a hand"
    row = lift("stack", ("seated row machine",))
    assert nearest_load(row, 58, gym).load_kg == 55
    assert gym.loads(lift("band", ("band",))) is None
    assert nearest_load(lift("band", ("band",)), 7, gym).load_kg == 7


def test_a_single_dumbbell_is_no_pair() -> None:
    one = stock_of("listed", (Listed("dumbbells", loads_kg=(10,), pairs=False),))
    assert not one.can_do(lift("dumbbell pair", ("dumbbells",)))
    assert one.can_do(lift("dumbbell", ("dumbbells",)))


def test_gyms() -> None:
    assert stock_of("full gym").can_do(PRESS)
    assert not stock_of("machines").can_do(PRESS)
    assert not stock_of("home dumbbells").can_do(PRESS)
    assert stock_of("bodyweight").can_do(lift("bodyweight", ()))
    assert not stock_of("listed").can_do(lift("bodyweight", ("pull-up bar",)))
    assert stock_of("listed", (Listed("pull-up bar"),)).can_do(lift("bodyweight", ("pull-up bar",)))
    with pytest.raises(KeyError):
        stock_of("somewhere")


def test_the_coachs_entry_replaces_the_usual_one() -> None:
    gym = stock_of("full gym", (Listed("dumbbells", from_kg=5, to_kg=20, step_kg=5),))
    assert gym.loads(lift("dumbbell", ("dumbbells",))) == (5, 10, 15, 20)


def test_an_entry_without_figures_takes_the_usual_loads() -> None:
    gym = stock_of("listed", (Listed("dumbbells"),))
    assert gym.loads(lift("dumbbell", ("dumbbells",))) == stock_of("full gym").loads(
        lift("dumbbell", ("dumbbells",))
    )


@given(
    st.floats(1, 400),
    st.sampled_from(["down", "nearest"]),
    st.sampled_from([5.0, 10.0, 15.0, 20.0]),
    st.lists(st.sampled_from([0.5, 1.25, 2.5, 5.0, 10.0, 15.0, 20.0, 25.0]), max_size=8),
    st.sampled_from(["kg", "lb"]),
)
@settings(**BOUNDED)
def test_the_load_is_reachable_and_down_never_exceeds(
    target: float, direction: Any, bar: float, plates: list[float], unit: Any
) -> None:
    gym = stock_of("listed", (Listed("barbell", bar, tuple(plates), unit=unit), *BAR[1:]))
    reachable = gym.loads(PRESS)
    choice = nearest_load(PRESS, target, gym, direction)
    assert reachable is not None and list(reachable) == sorted(set(reachable))
    if choice.load_kg is None:
        assert direction == "down" and reachable[0] > target - 1e-6
        return
    assert choice.load_kg in reachable
    if direction == "down":
        assert choice.load_kg <= target + 1e-8
        assert not any(choice.load_kg < one <= target for one in reachable)
    else:
        assert abs(choice.load_kg - target) <= min(abs(one - target) for one in reachable) + 1e-6


@given(st.lists(st.sampled_from([1.25, 2.5, 5.0, 10.0, 20.0]), min_size=1, max_size=7))
@settings(**BOUNDED)
def test_every_subset_of_plates_is_reachable(plates: list[float]) -> None:
    gym = stock_of("listed", (Listed("barbell", 20, tuple(plates)), *BAR[1:]))
    sums = {0.0}
    for plate in plates:
        sums |= {one + plate for one in sums}
    assert gym.loads(PRESS) == tuple(sorted(20 + 2 * one for one in sums))


@pytest.mark.parametrize("gym", ["full gym", "home dumbbells", "machines", "bodyweight"])
def test_every_exercise_answers_for_any_load_in_any_gym(gym: str) -> None:
    stock = stock_of(gym)
    for exercise in catalogue.exercises():
        reachable = stock.loads(exercise)
        for target in (-20.0, 0.0, 7.3, 60.0, 500.0):
            choice = nearest_load(exercise, target, stock)
            assert choice.text
            if reachable is not None and choice.load_kg is not None:
                assert choice.load_kg in reachable


def test_body_weight_under_a_barbell_is_body_weight() -> None:
    assert nearest_load(catalogue.exercise("inverted-row"), 0.0, stock_of("full gym")).text == (
        "body mass alone"
    )
