"""The picture of the week: words inside and apart, by the widths of the font itself."""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from functools import cache
from xml.etree import ElementTree

import pytest
from fontTools.ttLib import TTFont
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.exercises import catalogue
from setwright.handout.fitted_words import fitted
from setwright.handout.pdf.fonts import folder
from setwright.handout.week_picture import week_picture
from setwright.plan.week import Entry, Plan, Session
from setwright.rehearsal.model import Rehearsal
from setwright.rehearsal.rehearse import rehearse

SVG = "{http://www.w3.org/2000/svg}"
# Height of letters above and below their baseline, over their size.
ABOVE, BELOW = 0.74, 0.2
PRINTABLE = "".join(chr(n) for n in range(32, 127))


@cache
def _advances(bold: bool) -> dict[int, float]:
    place = folder()
    assert place
    with TTFont(place / ("DejaVuSans-Bold.ttf" if bold else "DejaVuSans.ttf")) as font:
        metrics, per = font["hmtx"], font["head"].unitsPerEm
        return {code: metrics[name][0] / per for code, name in font.getBestCmap().items()}


def true_width(words: str, size: float, bold: bool = False) -> float:
    return size * sum(_advances(bold)[ord(letter)] for letter in words)


@dataclass(frozen=True)
class Said:
    words: str
    left: float
    right: float
    top: float
    bottom: float


def said_in(svg: str) -> tuple[list[Said], float, float]:
    """Words of a picture with the room they take, and the size of the sheet."""
    root = ElementTree.fromstring(svg)
    found = []
    for one in root.iter(f"{SVG}text"):
        words, size = one.text or "", float(one.attrib["font-size"])
        wide = true_width(words, size, one.get("font-weight") == "bold")
        x, y = float(one.attrib["x"]), float(one.attrib["y"])
        left = x - wide * {"start": 0.0, "middle": 0.5, "end": 1.0}[one.attrib["text-anchor"]]
        found.append(Said(words, left, left + wide, y - ABOVE * size, y + BELOW * size))
    _, _, width, height = map(float, root.attrib["viewBox"].split())
    return found, width, height


def crowded() -> Plan:
    """Three exercises alternated, short blocks, long names, and more than the minutes to be had."""

    def once(exercise: str, letter: str | None = None) -> Entry:
        return Entry(
            exercise=exercise, sets=1, reps=(5, 5), rir=(0, 0), rest_s=(0, 0), superset=letter
        )

    entries = (
        once("hip-abduction-machine-hips-open", "A"),
        once("single-leg-romanian-deadlift", "A"),
        once("deep-knee-split-squat", "A"),
        once("bodyweight-bulgarian-split-squat"),
        once("bodyweight-squat"),
    )
    name = "A session whose name is longer than its column"
    session = Session(name=name, day="sunday", minutes=18, exercises=entries)
    return Plan(setwright="plan/1", title="Long " * 20, sessions=(session,))


def wide() -> Plan:
    """Names of the widest letters."""
    plan = crowded()
    session = plan.sessions[0].model_copy(update={"name": "W" * 60})
    days = tuple(
        session.model_copy(update={"day": day}) for day in ("monday", "tuesday", "wednesday")
    )
    return plan.model_copy(update={"title": "MW" * 60, "sessions": days})


@pytest.mark.parametrize("room", [(None, None), (528.0, 680.0), (528.0, 260.0)])
def test_words_stay_on_the_sheet_and_apart(
    plan: Plan, rehearsal: Rehearsal, room: tuple[float | None, float | None]
) -> None:
    for one in (plan, crowded(), wide()):
        lived = rehearsal if one is plan else rehearse(one)
        words, width, height = said_in(week_picture(one, lived, *room))
        assert len(words) > 10
        if room[1] is not None:
            assert height <= room[1] + 0.01
        for said in words:
            assert said.left >= 0 and said.right <= width, said
            assert said.top >= 0 and said.bottom <= height, said
        for said, other in itertools.combinations(words, 2):
            across = min(said.right, other.right) - max(said.left, other.left)
            down = min(said.bottom, other.bottom) - max(said.top, other.top)
            assert across <= 0.5 or down <= 0.5, (said, other)


def test_days_exercises_and_limits_are_named(plan: Plan, rehearsal: Rehearsal) -> None:
    words = [one.words for one in said_in(week_picture(plan, rehearsal))[0]]
    joined = " ".join(words)
    for session in plan.sessions:
        assert session.day.capitalize() in words
        for entry in session.exercises:
            assert catalogue.exercise(entry.exercise).name.split()[0] in joined
    assert "45 min to be had" in words


def test_every_working_set_is_a_mark_to_scale(plan: Plan, rehearsal: Rehearsal) -> None:
    root = ElementTree.fromstring(week_picture(plan, rehearsal))
    marks = [one for one in root.iter(f"{SVG}rect") if one.get("fill") == "#4d4d4d"]
    lived = [one for session in rehearsal.sessions for one in session.sets]
    assert len(marks) == len(lived) + 1  # and one in the key


def test_drawing_twice_gives_the_same_picture(plan: Plan, rehearsal: Rehearsal) -> None:
    assert week_picture(plan, rehearsal) == week_picture(plan, rehearsal)


def test_words_of_a_client_are_no_markup(plan: Plan, rehearsal: Rehearsal) -> None:
    hostile = plan.model_copy(update={"title": "</svg><script>x</script>"})
    root = ElementTree.fromstring(week_picture(hostile, rehearsal))
    assert not list(root.iter(f"{SVG}script"))
    assert "<script>x" in "".join(one.text or "" for one in root.iter(f"{SVG}text"))


@settings(derandomize=True, max_examples=300)
@given(
    words=st.text(st.sampled_from(PRINTABLE), max_size=80),
    room=st.floats(20, 200),
    most=st.integers(1, 4),
)
def test_fitted_words_fit_and_say_where_they_are_cut(words: str, room: float, most: int) -> None:
    lines = fitted(words, 8, room, most)
    assert len(lines) <= most
    assert all(true_width(one, 8) <= 1.02 * room for one in lines)
    shown = "".join("".join(lines).split())
    whole = "".join(words.split())
    assert shown == whole or (shown.endswith("…") and whole.startswith(shown[:-1]))
