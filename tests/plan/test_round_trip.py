"""Any plan written and read back is the same plan, and what is written is stable."""

from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.exercises.catalogue import ids
from setwright.plan.intake import DAYS
from setwright.plan.read import read_any_plan, read_plan
from setwright.plan.shorthand import fits_a_line, format_entry, parse_line
from setwright.plan.week import Entry, Plan, Session, Tempo, Unavoidable
from setwright.plan.write import update_plan, write_plan

FAST = settings(max_examples=120, derandomize=True, deadline=None)
TEXT = st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=40)
LINE_LIKE = st.sampled_from(
    [
        "3 x 8",
        "yes",
        "null",
        "0x1F",
        "1e3",
        "- a",
        "a: b",
        "#",
        "note: x",
        ": x",
        "RIR 2, rest 2 min",
        " a",
    ]
)
WORDS = TEXT | LINE_LIKE
SECONDS = st.integers(0, 20).map(float) | st.floats(0, 20) | st.just(0.8)
LOADS = (
    st.integers(0, 400).map(lambda halves: halves / 2)
    | st.integers(1, 400).map(lambda pounds: pounds * 0.45359237)
    | st.floats(0, 1000)
)
RIRS = st.integers(0, 10).map(float) | st.floats(0, 10)
TEMPOS = st.builds(
    Tempo,
    lowering_s=SECONDS.filter(lambda seconds: seconds > 0),
    stretched_s=SECONDS,
    lifting_s=SECONDS,
    top_s=SECONDS,
)


def band(low, high):
    return st.tuples(st.integers(low, high), st.integers(low, high)).map(
        lambda pair: tuple(sorted(pair))
    )


ENTRIES = st.builds(
    Entry,
    exercise=st.sampled_from(ids()),
    sets=st.integers(1, 20),
    reps=band(1, 100),
    rir=st.tuples(RIRS, RIRS),
    rest_s=band(0, 900),
    tempo=st.none() | TEMPOS,
    partials=st.sampled_from([None, "after the last set", "whole sets"]),
    load_kg=st.none() | LOADS,
    note=st.just("") | WORDS,
)


@st.composite
def sessions(draw, day):
    groups = draw(st.lists(st.lists(ENTRIES, min_size=1, max_size=3), min_size=1, max_size=3))
    entries = []
    for letter, group in zip("ABC", groups, strict=False):
        shared = letter if len(group) > 1 and draw(st.booleans()) else None
        entries += [entry.model_copy(update={"superset": shared}) for entry in group]
    return Session(
        name=draw(WORDS),
        day=day,
        minutes=draw(st.none() | st.integers(5, 300)),
        exercises=tuple(entries),
    )


@st.composite
def plans(draw):
    days = draw(st.lists(st.sampled_from(DAYS), min_size=1, max_size=3, unique=True))
    return Plan(
        setwright="plan/1",
        title=draw(WORDS),
        person=draw(st.just("") | WORDS),
        unit=draw(st.sampled_from(["kg", "lb"])),
        sessions=tuple(draw(sessions(day)) for day in days),
        unavoidable=tuple(
            draw(
                st.lists(
                    st.builds(Unavoidable, criterion=WORDS, subject=WORDS, because=WORDS),
                    max_size=2,
                )
            )
        ),
    )


@given(plans())
@FAST
def test_a_written_plan_reads_back_the_same(plan):
    text = write_plan(plan)
    assert read_plan(text, "plan.yaml") == plan
    assert read_any_plan(text, "plan.yaml") == plan
    assert write_plan(read_plan(text, "plan.yaml")) == text


@given(ENTRIES.filter(fits_a_line), st.sampled_from(["kg", "lb"]))
@FAST
def test_a_line_reads_back_the_same(entry, unit):
    assert parse_line(format_entry(entry, unit)) == entry


@given(plans(), plans())
@settings(FAST, max_examples=60)
def test_an_updated_file_holds_the_new_plan(before, after):
    assert read_plan(update_plan(write_plan(before), after), "plan.yaml") == after
