from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.plan.intake import Intake, KnownLoad, Screening, TrainingDay
from setwright.plan.week import Entry, Plan, Session, Tempo
from setwright.rehearsal.model import RehearsedSession
from setwright.rehearsal.rehearse import rehearse
from setwright.rehearsal.warm_up import ramp

BOUNDED = {"derandomize": True, "max_examples": 40, "deadline": None}
EIGHT = (
    "bench-press", "row", "leg-press", "leg-curl", "chest-fly", "pull-up", "leg-extension", "curl",
)  # fmt: skip


def entry(exercise: str, **changes: Any) -> Entry:
    fields = {"sets": 3, "reps": (8, 12), "rir": (2, 0), "rest_s": (120, 120)} | changes
    return Entry(exercise=exercise, **fields)


def session(small: Any, *entries: Entry, intake: Intake | None = None) -> RehearsedSession:
    plan = Plan(
        setwright="plan/1",
        title="test",
        sessions=(Session(name="one", day="monday", exercises=entries),),
    )
    return rehearse(plan, intake, small).sessions[0]


def possible(done: RehearsedSession, index: int) -> list[float]:
    return [one.possible for one in done.sets if one.entry == index]


def person(*known: KnownLoad, **changes: Any) -> Intake:
    fields: dict[str, Any] = {
        "setwright": "intake/1",
        "name": "Someone invented",
        "experience": "intermediate",
        "age_band": "18-39",
        "sex": "male",
        "body_mass_kg": 80,
        "screening": Screening(active_last_3_months=True),
        "days": (TrainingDay(day="monday", minutes=60),),
        "gym": "full gym",
        "known_loads": known,
    }
    return Intake(**(fields | changes))


def test_load_comes_from_the_known_set_and_fits_the_plates(small: Any) -> None:
    known = KnownLoad(exercise="bench-press", load_kg=80, reps=8, rir=2)
    done = session(small, entry("bench-press", reps=(8, 8)), intake=person(known))
    # Eight at 2 RIR is what the person has done: the same load comes back.
    assert done.sets[0].load_kg == 80
    assert done.sets[0].possible == pytest.approx(10, abs=0.01)
    other = session(small, entry("bench-press"), intake=person(known)).sets[0]
    assert other.load_kg is not None and other.load_kg < 80
    assert other.load_kg * 2 % 2.5 == 0


def test_body_mass_is_part_of_the_load(small: Any) -> None:
    known = KnownLoad(exercise="pull-up", load_kg=0, reps=8, rir=0)
    done = session(small, entry("pull-up", reps=(8, 8), rir=(0, 0)), intake=person(known))
    assert done.sets[0].load_kg == 0
    assert done.sets[0].possible == pytest.approx(8, abs=0.01)
    heavier = session(small, entry("pull-up", reps=(4, 4), rir=(0, 0)), intake=person(known))
    assert heavier.sets[0].load_kg is not None and heavier.sets[0].load_kg > 0


def test_without_loads_only_fractions(small: Any) -> None:
    done = session(small, entry("row"))
    assert all(one.load_kg is None for one in done.sets)
    assert done.sets[0].fresh == pytest.approx(14)
    assert 0.6 < done.sets[0].fraction < 0.75


def test_a_written_load_that_is_too_heavy_shows_up_as_negative_reserve(small: Any) -> None:
    known = KnownLoad(exercise="squat", load_kg=100, reps=8, rir=2)
    done = session(small, entry("squat", load_kg=110), intake=person(known))
    assert done.sets[-1].load_kg == 110
    assert done.sets[-1].reps == 8
    assert done.sets[-1].rir_real < 0


def test_repetitions_stay_in_the_band_and_never_exceed_what_is_possible_above_its_bottom(
    small: Any,
) -> None:
    done = session(small, *(entry(name, sets=4, rest_s=(60, 90)) for name in EIGHT))
    for one in done.sets:
        assert 8 <= one.reps <= 12
        assert one.reps == 8 or one.reps <= one.possible
        assert one.possible_low <= one.possible <= one.possible_high


@given(rest=st.integers(30, 240), more=st.integers(1, 120))
@settings(**BOUNDED)
def test_more_rest_never_makes_a_set_weaker(small: Any, rest: int, more: int) -> None:
    def run(seconds: int) -> list[float]:
        fixed = entry("squat", reps=(6, 6), rir=(2, 2), sets=4, rest_s=(seconds, seconds))
        return possible(session(small, fixed), 0)

    assert all(b >= a - 1e-9 for a, b in zip(run(rest), run(rest + more), strict=True))


def test_an_isolation_first_costs_the_compound(small: Any) -> None:
    before = session(small, entry("triceps-extension"), entry("bench-press"))
    alone = session(small, entry("leg-curl"), entry("bench-press"))
    assert possible(before, 1)[0] < possible(alone, 1)[0] - 0.5


def test_the_last_exercise_loses_repetitions(small: Any) -> None:
    # Journal of Strength and Conditioning Research, 2005, PMID 15705026.
    order = ["bench-press", "chest-fly", "triceps-extension"]
    first = session(small, *(entry(name) for name in order))
    last = session(small, *(entry(name) for name in reversed(order)))
    assert sum(possible(last, 2)) < sum(possible(first, 0))
    assert sum(possible(first, 2)) < sum(possible(last, 0))


def test_order_of_unrelated_exercises_hardly_matters(small: Any) -> None:
    order = ["leg-extension", "triceps-extension", "leg-curl", "curl"]
    one = session(small, *(entry(name) for name in order))
    other = session(small, *(entry(name) for name in reversed(order)))
    for index in range(4):
        assert sum(possible(one, index)) == pytest.approx(sum(possible(other, 3 - index)), rel=0.06)


def test_opposing_pairs_keep_repetitions_and_same_muscle_pairs_lose_them(small: Any) -> None:
    # Sports Medicine, 2025, 10.1007/s40279-025-02176-8.
    def total(first: str, second: str, letter: str | None) -> float:
        done = session(
            small,
            entry(first, superset=letter, reps=(5, 12), rir=(0, 0)),
            entry(second, superset=letter, reps=(5, 12), rir=(0, 0)),
        )
        return sum(one.possible for one in done.sets)

    opposing = total("bench-press", "row", "A") / total("bench-press", "row", None)
    same = total("bench-press", "chest-fly", "A") / total("bench-press", "chest-fly", None)
    assert opposing == pytest.approx(1, abs=0.05)
    assert same < opposing - 0.05


def test_supersets_are_interleaved(small: Any) -> None:
    done = session(small, entry("bench-press", superset="A"), entry("row", superset="A", sets=2))
    assert [(one.entry, one.number) for one in done.sets] == [
        (0, 1), (1, 1), (0, 2), (1, 2), (0, 3),
    ]  # fmt: skip
    for one, after in zip(done.sets, done.sets[1:], strict=False):
        assert after.start_s >= one.start_s + one.work_s
    assert done.sets[0].rest_s > 120
    assert done.sets[-1].rest_s == 0


def test_the_clock_adds_up(small: Any) -> None:
    done = session(small, *(entry(name) for name in EIGHT))
    parts = done.working_s + done.resting_s + done.warm_up_s + done.changing_s
    assert done.total_s == pytest.approx(parts)
    assert done.low_s < done.total_s < done.high_s
    assert done.total_s == pytest.approx(done.sets[-1].start_s + done.sets[-1].work_s)


def test_the_clock_against_published_sessions(small: Any) -> None:
    # 24 sets to failure near 58 minutes, as supersets near 35: Frontiers in Psychology, 2022,
    # 10.3389/fpsyg.2022.912368. The rest is not visible; the two figures agree with 2 minutes.
    # Ramp sets are left out, as none are reported. Tolerance 10 % for straight sets, 30 % for
    # supersets: an order of magnitude, as docs/rehearsal.md says.
    def minutes(pairs: bool) -> float:
        letters = "AABBCCDD" if pairs else [None] * 8
        done = session(
            small,
            *(
                entry(name, rir=(0, 0), superset=letter)
                for name, letter in zip(EIGHT, letters, strict=True)
            ),
        )
        return (done.total_s - done.warm_up_s) / 60

    assert minutes(False) == pytest.approx(58, rel=0.1)
    assert minutes(True) == pytest.approx(35, rel=0.3)
    assert 1.2 < minutes(False) / minutes(True) < 1.7


def test_one_side_takes_twice_the_time_and_a_slow_tempo_costs_repetitions(small: Any) -> None:
    done = session(small, entry("split-squat"), entry("leg-press"))
    assert done.sets[0].work_s > 1.7 * done.sets[3].work_s
    # Knee extension at 25 against 80 degrees a second: 8.8 of 16.3 and 5.9 of 9.4 repetitions.
    # Revista Brasileira de Medicina do Esporte, 2007.
    known = person(KnownLoad(exercise="leg-extension", load_kg=50, reps=12))
    slow = entry("leg-extension", tempo=Tempo(lowering_s=6, lifting_s=5), load_kg=50)
    quick = entry("leg-extension", load_kg=50)
    ratio = (
        session(small, slow, intake=known).sets[0].fresh
        / session(small, quick, intake=known).sets[0].fresh
    )
    assert 0.45 < ratio < 0.7


def test_rest_that_was_enough_needs_no_more(small: Any) -> None:
    long = session(small, entry("squat", rest_s=(600, 600), rir=(3, 3)))
    short = session(small, entry("squat", rest_s=(45, 45), rir=(0, 0)))
    assert all(one.rest_needed_s < 600 for one in long.sets)
    assert all(one.rest_needed_s > 45 for one in short.sets[1:])
    assert long.sets[0].rest_needed_s == short.sets[0].rest_needed_s == 0


def test_ramp_sets(small: Any) -> None:
    squat, curl = small.exercise("squat"), small.exercise("curl")
    # International Journal of Environmental Research and Public Health, 2020,
    # 10.3390/ijerph17186882: 40 and 80 % of the working load.
    assert [one.of_working for one in ramp(squat, 0.8, warm=False)] == [0.4, 0.8]
    assert len(ramp(squat, 0.8, warm=True)) == 1
    assert ramp(curl, 0.7, warm=True) == ()
    done = session(small, entry("squat", reps=(5, 6)), entry("leg-press", reps=(5, 6)))
    assert [index for index, _ in done.warm_up] == [0, 0, 1]


def test_the_same_plan_is_rehearsed_the_same(small: Any) -> None:
    first, second = (session(small, *(entry(name) for name in EIGHT)) for _ in range(2))
    assert first == second
    assert np.isfinite([one.possible for one in first.sets]).all()
