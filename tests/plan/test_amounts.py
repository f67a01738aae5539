"""The trade's ways of writing amounts."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.plan import amounts
from setwright.plan.amounts import AmountError
from setwright.plan.week import Tempo


@pytest.mark.parametrize(
    ("read", "written", "value"),
    [
        (amounts.read_reps, 8, (8, 8)),
        (amounts.read_reps, "8", (8, 8)),
        (amounts.read_reps, "8-10", (8, 10)),
        (amounts.read_reps, "8 – 10", (8, 10)),
        (amounts.read_reps, "8 to 10", (8, 10)),
        (amounts.read_reps, [8, 10], (8, 10)),
        (amounts.read_rir, 2, (2.0, 2.0)),
        (amounts.read_rir, "3-1", (3.0, 1.0)),
        (amounts.read_rir, "0,5", (0.5, 0.5)),
        (amounts.read_rir, [3, 0.5], (3.0, 0.5)),
        (amounts.read_rest, 90, (90, 90)),
        (amounts.read_rest, "90 s", (90, 90)),
        (amounts.read_rest, "90-120 s", (90, 120)),
        (amounts.read_rest, "2-3 min", (120, 180)),
        (amounts.read_rest, "90 s - 2 min", (90, 120)),
        (amounts.read_rest, "1.5 min", (90, 90)),
        (amounts.read_rest, "1:30", (90, 90)),
        (amounts.read_rest, "1:30-2:00", (90, 120)),
        (amounts.read_rest, "2'", (120, 120)),
        (amounts.read_load, "60 kg", 60.0),
        (amounts.read_load, "22,5kg", 22.5),
        # 1 lb is 0.45359237 kg by definition (international avoirdupois pound).
        (amounts.read_load, "135 lb", 135 * 0.45359237),
        (amounts.read_load, "100 lbs", 45.359237),
    ],
)
def test_read(read, written, value):
    assert read(written) == value


@pytest.mark.parametrize(
    ("written", "seconds"),
    [
        ("3/1/1/0", (3, 1, 1, 0)),
        ("3-1-1-0", (3, 1, 1, 0)),
        ("3110", (3, 1, 1, 0)),
        (3110, (3, 1, 1, 0)),
        ("31X0", (3, 1, 0.8, 0)),
        ("2/0/X", (2, 0, 0.8, 0)),
        ("2.5/0/1/0", (2.5, 0, 1, 0)),
    ],
)
def test_tempo(written, seconds):
    lowering, stretched, lifting, top = map(float, seconds)
    assert amounts.read_tempo(written) == Tempo(
        lowering_s=lowering, stretched_s=stretched, lifting_s=lifting, top_s=top
    )


@pytest.mark.parametrize(
    ("read", "written"),
    [
        (amounts.read_reps, True),
        (amounts.read_reps, "eight"),
        (amounts.read_reps, "8-10-12"),
        (amounts.read_reps, [8, 10, 12]),
        (amounts.read_reps, [True, 8]),
        (amounts.read_reps, None),
        (amounts.read_rir, "low"),
        (amounts.read_rest, "2 h"),
        (amounts.read_rest, "1:75"),
        (amounts.read_rest, "0.01 min"),
        (amounts.read_rest, False),
        (amounts.read_tempo, "3/1"),
        (amounts.read_tempo, "X/1/1/0"),
        (amounts.read_tempo, "3/1/1/X"),
        (amounts.read_tempo, "30/0/1/0"),
        (amounts.read_tempo, 31),
        (amounts.read_load, "60"),
        (amounts.read_load, "60 stone"),
        (amounts.read_load, True),
    ],
)
def test_refused_with_the_forms_allowed(read, written):
    with pytest.raises(AmountError, match=r"\w"):
        read(written)


@given(st.floats(0, 1000), st.sampled_from(["kg", "lb"]))
@settings(max_examples=300, derandomize=True, deadline=None)
def test_any_load_is_exact_when_read_back(load_kg, unit):
    assert amounts.read_load(amounts.write_load(load_kg, unit)) == load_kg


@given(st.integers(0, 4000))
@settings(max_examples=200, derandomize=True, deadline=None)
def test_quarter_pounds_stay_pounds(quarters):
    pounds = quarters / 4
    assert amounts.write_load(amounts.read_load(f"{pounds} lb"), "lb").endswith(" lb")
