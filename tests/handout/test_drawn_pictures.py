"""The pictures of a rehearsal, of the dose, of the response and of what was traded."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from setwright.audit.audit import audit, context_of
from setwright.audit.criteria.performance_kept import worst_kept
from setwright.exercises import catalogue
from setwright.handout.dose_picture import dose_picture
from setwright.handout.letter_widths import measured
from setwright.handout.rehearsal_picture import rehearsal_picture
from setwright.handout.teaching.response_plot import curve, response_plot
from setwright.handout.teaching.trade_plots import week_plot, worth_plot
from setwright.handout.teaching.trials import Trial, whole_week, without_each
from setwright.plan.intake import Intake
from setwright.plan.week import Entry, Plan, Session
from setwright.rehearsal.model import Rehearsal
from setwright.rehearsal.rehearse import rehearse
from setwright.response.curves import week_growth

TEXT = "{http://www.w3.org/2000/svg}text"


def crowded() -> Plan:
    """Twelve exercises with the longest names, up to eight sets."""
    longest = sorted(catalogue.exercises(), key=lambda one: (-len(one.name), one.id))[:12]
    entries = tuple(
        Entry(exercise=one.id, sets=1 + number % 8, reps=(8, 30), rir=(2, 1), rest_s=(45, 60))
        for number, one in enumerate(longest)
    )
    session = Session(name="A name as long as one can be, " * 2, day="sunday", exercises=entries)
    return Plan(setwright="plan/1", title="Long $x^2$ <b> " * 8, sessions=(session,))


@pytest.fixture(
    scope="module", params=["rehearsal", "dose", "response", "curve", "trade", "worth", "crowded"]
)
def drawn(request: pytest.FixtureRequest, plan: Plan, intake: Intake, rehearsal: Rehearsal) -> str:
    context = context_of(plan, intake, rehearsal)
    if request.param == "rehearsal":
        return rehearsal_picture(plan, rehearsal)
    if request.param == "dose":
        return dose_picture(context.response, intake, f"{plan.title} <b> $x$")
    if request.param in ("response", "curve"):
        return response_plot(context, strip=request.param == "response")
    if request.param == "trade":
        return week_plot(whole_week(context), 100)
    if request.param == "worth":
        return worth_plot([(one.name, one) for one in without_each(context)])
    return rehearsal_picture(crowded(), rehearse(crowded()))


def words_in(svg: str) -> list[str]:
    return [one.text or "" for one in ElementTree.fromstring(svg).iter(TEXT)]


def test_no_word_leaves_the_sheet(drawn: str) -> None:
    root = ElementTree.fromstring(drawn)
    _, _, width, height = map(float, root.get("viewBox", "").split())
    seen = 0
    for one in root.iter(TEXT):
        size, x, y = (float(one.get(key, "0")) for key in ("font-size", "x", "y"))
        wide = measured(one.text or "", size, one.get("font-weight") == "bold")
        left = {"start": x, "middle": x - wide / 2, "end": x - wide}[one.get("text-anchor", "")]
        assert left >= -1 and left + wide <= width + 1, one.text
        assert y - size >= -2 and y <= height, one.text
        seen += 1
    assert seen > 5


def test_pictures_are_grey(drawn: str) -> None:
    colours = set(re.findall(r"#[0-9a-f]{6}\b", drawn))
    assert colours
    assert all(one[1:3] == one[3:5] == one[5:7] for one in colours)


def test_a_rehearsal_names_sessions_exercises_and_what_is_kept(
    plan: Plan, rehearsal: Rehearsal
) -> None:
    words = words_in(rehearsal_picture(plan, rehearsal))
    for number, session in enumerate(plan.sessions):
        assert f"{session.day.capitalize()}: {session.name}" in words
        for position, entry in enumerate(session.exercises):
            name = catalogue.exercise(entry.exercise).name
            assert any(name in one for one in words)
            sets = [one for one in rehearsal.sessions[number].sets if one.entry == position]
            if len(sets) > 1:
                assert f"keeps {worst_kept(sets)[1]:.0%} of its first set" in words


def test_a_rehearsal_of_one_session_leaves_out_the_others(plan: Plan, rehearsal: Rehearsal) -> None:
    words = " ".join(words_in(rehearsal_picture(plan, rehearsal, [1])))
    assert "Hinge day" in words and "Squat day" not in words


def test_the_dose_names_what_the_week_leaves_short(plan: Plan, intake: Intake) -> None:
    svg = dose_picture(audit(plan, intake).response, intake)
    words = words_in(svg)
    for name in ("adductor longus", "rectus femoris", "gluteus minimus", "deltoid, side"):
        assert name in words
    assert "url(#dose-below)" in svg


def test_the_curve_is_the_response_and_lies_in_its_interval(plan: Plan, intake: Intake) -> None:
    context = context_of(plan, intake)
    sets, middle, low, high = curve(context, 20)
    assert middle == pytest.approx(week_growth(sets, context.person))
    assert (low <= middle).all() and (middle <= high).all()
    assert middle[0] == 0


def test_labels_of_the_trade_do_not_cover_one_another(plan: Plan, intake: Intake) -> None:
    svg = week_plot(whole_week(context_of(plan, intake)), 100)
    boxes = []
    for one in ElementTree.fromstring(svg).iter(TEXT):
        wide = measured(one.text or "", 7.5)
        x, y = float(one.get("x", "0")), float(one.get("y", "0"))
        left = {"start": x, "middle": x - wide / 2, "end": x - wide}[one.get("text-anchor", "")]
        boxes.append((left, left + wide, y, one.text))
    assert len(boxes) > 30
    for number, (left, right, y, said) in enumerate(boxes):
        for other_left, other_right, other_y, other in boxes[number + 1 :]:
            clear = right <= other_left or other_right <= left or abs(y - other_y) >= 5
            assert clear, (said, other)


def test_nothing_saved_or_lost_can_be_drawn() -> None:
    nothing = Trial("nothing", 0.0, 0.0, 0.0, 0.0)
    assert "no time saved" in words_in(worth_plot([("nothing", nothing)]))
    costly = Trial("costly", -10.0, -0.02, -0.03, -0.01)
    assert "2.0 %" in words_in(worth_plot([("costly", costly)]))
    assert "nothing" in words_in(week_plot([nothing], 30))
    assert "as it stands" in words_in(week_plot([], 30))
