"""The board in a real browser: by mouse, by keyboard only, and while a design runs."""

import re

import pytest
from django.urls import reverse
from playwright.sync_api import expect

from setwright.web.engine.folder import plan_of
from setwright.web.models import DesignJob

SIZES = {"desk": (1440, 900), "tablet": (820, 1180), "phone": (390, 844)}


def plan(week):
    week.refresh_from_db()
    return plan_of(week.current.text)


def ids(week, session):
    return [entry.exercise for entry in plan(week).sessions[session].exercises]


def card(page, name):
    return page.locator(".card", has_text=name)


def settled(page, version):
    expect(page.locator("#board")).to_have_attribute("data-base", str(version))


def test_drag_by_mouse_within_and_between_days(open_board, week) -> None:
    page = open_board()
    squat, pulldown = card(page, "Back squat"), card(page, "Lat pulldown")
    box = pulldown.bounding_box()
    squat.hover()
    page.mouse.down()
    page.mouse.move(box["x"] + 40, box["y"] + box["height"] - 4, steps=8)
    expect(page.locator(".drop")).to_have_count(1)
    page.mouse.up()
    settled(page, 2)
    assert ids(week, 1) == ["lat-pulldown", "back-squat", "dumbbell-curl"]
    expect(page.locator("#live")).to_have_text("Back squat: Thursday, place 2 of 3")
    expect(page.locator(".summary")).to_contain_text("Last: Back squat")
    # A drag that ends where it began, and one that is broken off, change nothing.
    for end in ("up", "escape"):
        card(page, "Dumbbell curl").hover()
        page.mouse.down()
        page.mouse.move(box["x"] + 60, box["y"] + 5, steps=4)
        if end == "escape":
            page.keyboard.press("Escape")
        else:
            card(page, "Dumbbell curl").hover()
        page.mouse.up()
    page.wait_for_timeout(300)
    settled(page, 2)


def test_drag_with_a_finger_by_the_grip(open_board, week) -> None:
    page = open_board(viewport={"width": 820, "height": 1180}, has_touch=True)
    touch = page.context.new_cdp_session(page)

    def finger(kind, *points):
        spots = [{"x": x, "y": y} for x, y in points]
        touch.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": spots})

    grip = card(page, "Back squat").locator(".grip").bounding_box()
    to = card(page, "Dumbbell curl").bounding_box()
    start = (grip["x"] + grip["width"] / 2, grip["y"] + grip["height"] / 2)
    end = (to["x"] + to["width"] / 2, to["y"] + to["height"] - 3)
    finger("touchStart", start)
    for step in range(1, 9):
        finger("touchMove", tuple(a + (b - a) * step / 8 for a, b in zip(start, end, strict=True)))
    finger("touchEnd")
    settled(page, 2)
    assert ids(week, 1) == ["lat-pulldown", "dumbbell-curl", "back-squat"]


def test_everything_by_keyboard_only(open_board, week) -> None:
    page = open_board()
    for _ in range(40):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.dataset.exercise") == "back-squat":
            break
    focused = page.locator(":focus")
    expect(focused).to_have_attribute("data-exercise", "back-squat")
    page.keyboard.press("ArrowDown")
    expect(focused).to_have_attribute("data-exercise", "barbell-bench-press")
    page.keyboard.press("ArrowUp")
    page.keyboard.press("ArrowRight")
    expect(focused).to_have_attribute("data-exercise", "lat-pulldown")
    live = page.locator("#live")
    page.keyboard.press("Space")
    expect(live).to_contain_text("Lat pulldown picked up")
    page.keyboard.press("ArrowLeft")
    expect(live).to_have_text("Monday, place 1 of 5")
    page.keyboard.press("ArrowDown")
    expect(live).to_have_text("Monday, place 2 of 5")
    page.keyboard.press("Space")
    settled(page, 2)
    assert ids(week, 0)[:2] == ["back-squat", "lat-pulldown"]
    # The focus stays on what was moved.
    expect(focused).to_have_attribute("data-exercise", "lat-pulldown")
    page.keyboard.press("+")
    settled(page, 3)
    expect(live).to_have_text("Lat pulldown: 4 sets")
    page.keyboard.press("l")
    expect(focused).to_have_class(re.compile("locked"))
    page.keyboard.press("Delete")
    settled(page, 4)
    assert "lat-pulldown" not in ids(week, 0)
    page.keyboard.press("Control+z")
    settled(page, 3)
    page.keyboard.press("Control+z")
    settled(page, 2)
    page.keyboard.press("Control+Shift+z")
    settled(page, 3)
    # Picked up and let back: nothing happens.
    card(page, "Dumbbell curl").focus()
    page.keyboard.press("Space")
    page.keyboard.press("ArrowLeft")
    page.keyboard.press("Escape")
    expect(live).to_contain_text("stays where it was")
    page.wait_for_timeout(200)
    settled(page, 3)


def test_forms_beside_the_board(open_board, week) -> None:
    page = open_board()
    card(page, "Back squat").click()
    panel = page.locator("#panel")
    expect(panel.locator("h2")).to_have_text("Back squat")
    panel.get_by_label("Sets", exact=True).fill("5")
    panel.get_by_label("Repetitions, lowest").fill("9")
    panel.get_by_role("button", name="Change it").click()
    expect(panel.get_by_role("alert")).to_be_visible()
    expect(panel.get_by_label("Sets", exact=True)).to_have_value("5")
    panel.get_by_label("Repetitions, lowest").fill("5")
    panel.get_by_role("button", name="Change it").click()
    settled(page, 2)
    assert plan(week).sessions[0].exercises[0].sets == 5
    panel.get_by_role("link", name="Substitutes").click()
    panel.get_by_role("button", name="Put in").first.click()
    settled(page, 3)
    assert ids(week, 0)[0] != "back-squat"
    page.get_by_role("link", name="Thursday").click()
    expect(panel.get_by_label("Name or muscle")).to_be_visible()
    # A script types before the page listens; a person does not.
    expect(page.locator(".htmx-request, .htmx-swapping, .htmx-settling")).to_have_count(0)
    panel.get_by_label("Name or muscle").press_sequentially("calves")
    panel.get_by_role("button", name="Add Standing calf raise", exact=True).click()
    settled(page, 4)
    assert ids(week, 1)[-1] == "standing-calf-raise"


def test_a_board_left_open_is_told_what_happened(open_board, week) -> None:
    first, second = open_board(), open_board()
    card(first, "Back squat").focus()
    first.keyboard.press("+")
    settled(first, 2)
    card(second, "Dumbbell curl").focus()
    second.keyboard.press("Delete")
    notice = second.locator("#notice")
    expect(notice).to_contain_text("Version 2: Back squat: 4 sets")
    notice.get_by_role("button", name="Do it on version 2 as well").click()
    expect(second.locator("#board")).to_have_attribute("data-base", "4")
    assert plan(week).sessions[0].exercises[0].sets == 4
    assert ids(week, 1) == ["lat-pulldown"]


def test_a_design_is_followed_and_cancelled(open_board, week) -> None:
    page = open_board()
    page.get_by_role("link", name="Design", exact=True).click()
    page.get_by_label("Seconds to search").fill("60")
    page.get_by_role("button", name="Design it").click()
    job = page.locator("#job")
    expect(job).to_contain_text("searching", timeout=60_000)
    # The board works on meanwhile.
    card(page, "Back squat").focus()
    page.keyboard.press("+")
    settled(page, 2)
    page.locator("#job").get_by_role("button", name="Cancel").click()
    expect(page.locator(".messages")).to_contain_text("cancelled")
    expect(page.locator("#job")).to_have_count(0)
    assert DesignJob.objects.get().state == "cancelled"


@pytest.mark.parametrize("colours", ["light", "dark"])
@pytest.mark.parametrize("size", SIZES)
def test_nothing_against_the_guidelines(open_board, axe_violations, size, colours) -> None:
    width, height = SIZES[size]
    wishes = {"viewport": {"width": width, "height": height}, "color_scheme": colours}
    page = open_board("?at=0.1&show=substitutes", **wishes)
    assert axe_violations(page) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= width


@pytest.mark.parametrize(
    "name", ["board-versions", "board-design", "weeks", "compare", "add a day"]
)
def test_other_pages_against_the_guidelines(
    open_board, axe_violations, live_server, week, at, name
) -> None:
    page = open_board("?session=1&q=curl")
    assert axe_violations(page) == []
    address = {
        "weeks": lambda: reverse("weeks", args=(week.client_id,)),
        "compare": lambda: at("board-compare") + "?a=1&b=1",
        "add a day": lambda: at() + "?add=day&q=squat",
    }.get(name, lambda: at(name))()
    page.goto(live_server.url + address)
    assert axe_violations(page) == []


def test_text_at_twice_its_size(open_board) -> None:
    page = open_board("?at=0.0", viewport={"width": 1280, "height": 900})
    page.evaluate("document.documentElement.style.setProperty('font-size', '200%')")
    assert page.evaluate("document.documentElement.scrollWidth") <= 1280
    tall = page.locator(".card").first.bounding_box()["height"]
    page.evaluate("document.documentElement.style.setProperty('font-size', '100%')")
    assert tall == pytest.approx(2 * page.locator(".card").first.bounding_box()["height"], rel=0.05)


def test_one_day_at_a_time_on_a_phone(open_board) -> None:
    page = open_board(viewport={"width": 390, "height": 844})
    expect(card(page, "Back squat")).to_be_visible()
    expect(card(page, "Lat pulldown")).to_be_hidden()
    page.get_by_role("link", name="Thu", exact=True).click()
    expect(card(page, "Back squat")).to_be_hidden()
    card(page, "Lat pulldown").click()
    page.get_by_role("button", name="Later").click()
    settled(page, 2)
    expect(card(page, "Lat pulldown")).to_be_visible()
    for button in page.locator("#panel button").all():
        assert button.bounding_box()["height"] >= 44


def test_without_a_script_everything_stands_and_works(open_board, week) -> None:
    page = open_board("?at=0.0", java_script_enabled=False)
    expect(card(page, "Lat pulldown")).to_be_visible()
    page.get_by_role("button", name="One set more").click()
    expect(page.locator(".messages")).to_contain_text("Back squat: 4 sets")
    assert plan(week).sessions[0].exercises[0].sets == 4
