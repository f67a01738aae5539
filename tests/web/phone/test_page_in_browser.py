"""The page between sets: what is asked, what is answered, and that everybody can use it."""

import re
from datetime import datetime, timedelta

import pytest
from phone_practice import today
from playwright.sync_api import expect

from setwright.plan.log_store import RECORDS

SMALL = {"width": 390, "height": 844}
# Every control that can be pressed, with the box that takes the press.
CONTROLS = """() => [...document.querySelectorAll(
  'main button, main summary, main select, main input:not([type=hidden]), main a, .rest button')]
  .filter((one) => one.checkVisibility({ visibilityProperty: true }))
  .map((one) => one.matches('[type=radio], [type=checkbox]') ? one.closest('label') : one)
  .map((one) => [one.textContent.trim() || one.name, one.getBoundingClientRect()])
  .filter(([, box]) => box.height < 48 || box.width < 48)
  .map(([name, box]) => `${name}: ${Math.round(box.width)} x ${Math.round(box.height)}`)"""


def section(device):
    return device.page.locator(".work:visible").first


def records(server) -> list[dict]:
    return server.records(today().isoformat())


def test_the_next_set_is_asked_from_the_last_one(device) -> None:
    ask = section(device).locator(".ask")
    assert ask.inner_text().startswith("60 kg × 8")
    device.page.locator("#now-0-own-reps").fill("4")
    device.log_set("0")
    expect(section(device).locator(".which")).to_have_text("Set 2 of 3")
    expect(section(device).locator(".why")).to_contain_text("far short")
    assert float(device.page.locator("#now-0-own-load").input_value()) < 60


def test_without_a_network_the_same_is_asked(server, device) -> None:
    server.stop()
    device.page.locator("#now-0-own-reps").fill("4")
    device.log_set("0")
    expect(section(device).locator(".why")).to_contain_text("far short")
    offline = section(device).locator(".next").inner_text()
    server.start()
    device.says("All sent.")
    device.page.reload()
    device.page.wait_for_selector("html.awake")
    assert section(device).locator(".next").inner_text() == offline


def test_the_steps_are_those_of_the_kit(device) -> None:
    load = device.page.locator("#now-0-own-load")
    device.page.get_by_role("button", name="More load").first.click()
    assert load.input_value() == "62.5"
    expect(section(device).locator(".how")).to_have_text("20 kg empty + 20, 1.25 kg a side")
    for _ in range(2):
        device.page.get_by_role("button", name="Less load").first.click()
    assert load.input_value() == "57.5"


def test_a_set_is_changed(server, device) -> None:
    device.log_set("2")
    device.page.get_by_role("button", name=re.compile("^Change")).click()
    device.page.locator("#now-0-own-reps").fill("9")
    section(device).get_by_role("button", name="Save the change").click()
    expect(section(device).locator(".said")).to_have_text("Set 1: 60 kg × 9, 2 left")
    device.says("All sent.")
    assert [one["kind"] for one in records(server)] == ["set", "withdrawn", "set"]
    assert [one["reps"] for one in records(server) if one["kind"] == "set"] == [8, 9]


def test_pain_is_answered_at_once_and_needs_a_place(server, device) -> None:
    server.stop()
    section(device).locator(".further > summary").click()
    device.page.locator("#now-0-own-pain").select_option("7")
    expect(section(device).locator(".advice")).to_contain_text("stop and exchange")
    section(device).locator("button.log").click()
    expect(section(device).locator(".form-wrong")).to_contain_text("where it hurts")


def test_strong_pain_ends_the_exercise(server, device) -> None:
    server.stop()
    section(device).locator(".further > summary").click()
    device.page.locator("#now-0-own-pain").select_option("7")
    device.page.locator("#now-0-own-where").fill("shoulder")
    device.log_set("2")
    expect(section(device).locator("p.over")).to_contain_text("Pain 7 of 10")
    assert not section(device).locator("form.set").is_visible()
    device.page.locator(".steps button").nth(1).click()
    assert section(device).locator("form.set").is_visible()


def test_a_symptom_stops_everything_without_a_network(server, device) -> None:
    server.stop()
    section(device).get_by_text("Something is wrong: stop").click()
    device.page.get_by_label("chest pain").check()
    expect(device.page.locator("#stop-words")).to_contain_text("emergency services")
    device.page.get_by_role("button", name="Report it and stop").click()
    words = device.page.locator("#stop-words")
    expect(words).to_contain_text("emergency services")
    expect(words).to_be_focused()
    for place in range(4):
        device.page.locator(".steps button").nth(place).click()
        assert not section(device).locator("form.set").is_visible()
    server.start()
    device.says("All sent.")
    assert records(server)[0]["symptoms"] == ["chest pain"]
    device.page.reload()
    expect(device.page.get_by_role("heading", name="No session")).to_be_visible()


def test_the_given_stand_in_is_done_instead(server, device) -> None:
    server.stop()
    section(device).get_by_text("Swap it or leave it out").click()
    section(device).get_by_role("button", name=re.compile("^Do ")).click()
    expect(section(device).locator("h2")).to_contain_text("Decline bench press")
    device.page.locator("#now-0-other-load").fill("50")
    device.log_set("2")
    server.start()
    device.says("All sent.")
    swap, done = records(server)
    assert swap["by"] == done["exercise"] == "decline-bench-press"


def test_a_load_that_is_not_written_is_asked_for(device) -> None:
    device.page.locator(".steps button").nth(1).click()
    section(device).locator("button.log").click()
    expect(section(device).locator(".form-wrong")).to_have_text("Write down the load.")
    assert device.logged == 0


def test_supersets_alternate(device) -> None:
    device.page.locator(".steps button").nth(2).click()
    names = []
    for _ in range(4):
        names.append(section(device).locator("h2").inner_text())
        device.log_set("1")
    assert ["3A" in one for one in names] == [True, False, True, False]


def test_one_side_partial_repetitions_and_a_drop_set(server, device) -> None:
    device.page.locator(".steps button").nth(1).click()
    row = section(device)
    row.locator("[name=load]").fill("20")
    for side in ("left", "right"):
        row.get_by_role("radio", name=side, exact=True).check()
        device.log_set("2")
    expect(row.locator(".which")).to_have_text("Set 2 of 2")
    row.locator(".further > summary").click()
    row.get_by_label("Partial repetitions after the full ones").fill("3")
    device.log_set("0")
    row.get_by_role("button", name="Another set, or a drop set").click()
    row.locator(".further > summary").click()
    row.get_by_label("Kind of set").select_option("drop")
    row.locator("[name=load]").fill("14")
    device.log_set("0")
    device.says("All sent.")
    kept = [RECORDS.validate_python(one) for one in records(server)]
    assert [(one.side, one.partial_reps, one.role) for one in kept] == [
        ("left", 0, "working"), ("right", 0, "working"), (None, 3, "working"), (None, 0, "drop")
    ]  # fmt: skip


def test_the_session_is_finished(server, device) -> None:
    device.log_set("2")
    device.page.get_by_role("button", name="Finish and leave out what was not begun").click()
    expect(device.page.locator(".meeting[data-which=now] .steps .over")).to_have_count(3)
    device.says("All sent.")
    skipped = [one for one in records(server) if one["kind"] == "skipped"]
    assert len(skipped) == 3
    assert "1 of 9 sets done" in device.page.locator(".finish .sum").first.inner_text()


def test_the_rest_is_right_after_the_screen_was_locked(device) -> None:
    device.log_set("2")
    clock = device.page.locator("#rest-clock")
    expect(clock).to_have_text(re.compile(r"^[12]:\d\d$"))
    device.page.reload()
    device.page.wait_for_selector("html.awake")
    expect(clock).to_have_text(re.compile(r"^[12]:\d\d$"))
    assert device.page.locator("#rest-over").inner_text() == ""
    device.page.clock.set_system_time(datetime.now() + timedelta(minutes=5))
    # What the browser says when the screen is on again.
    device.page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    expect(clock).to_have_text(re.compile(r"^\+"))
    expect(device.page.locator("#rest-over")).to_contain_text("Rest is over. Set 2")


def test_a_page_from_another_day_opens_the_session_that_is_due(server, device) -> None:
    server.stop()
    device.page.clock.set_system_time(datetime.now() + timedelta(days=2))
    device.page.reload()
    device.page.wait_for_selector("html.awake")
    expect(device.page.locator("#stale")).to_contain_text("This page is from")
    press = device.page.locator("#then-0-own")
    expect(press.locator("h2")).to_contain_text("Leg press")
    press.locator("[name=load]").fill("140")
    press.locator("button.log").click()
    expect(press.locator(".said")).to_have_text("Set 1: 140 kg × 8")


def test_the_page_can_be_installed(device) -> None:
    session = device.page.context.new_cdp_session(device.page)
    assert session.send("Page.getInstallabilityErrors")["installabilityErrors"] == []


def test_without_script_a_set_is_logged(server, browser, tokens) -> None:
    context = browser.new_context(java_script_enabled=False, viewport=SMALL)
    page = context.new_page()
    page.goto(f"{server.address}/join/{tokens[1]}")
    page.get_by_role("button", name="Join on this phone").click()
    page.locator("#now-0-own button.log").click()
    assert "60 kg × 8" in page.locator("#now-0-own .logged").inner_text()
    assert "Set 2 of 3" in page.locator("#now-0-own .which").inner_text()
    context.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing(device, axe_violations, scheme) -> None:
    page = device.page
    page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
    device.log_set("2")
    assert axe_violations(page) == []
    page.get_by_role("button", name="Whole list").first.click()
    for summary in page.locator("details:not([open]) > summary").all():
        if summary.is_visible():
            summary.click()
    assert axe_violations(page) == []


def test_every_control_takes_a_thumb(device) -> None:
    device.log_set("2")
    device.page.get_by_role("button", name="Whole list").first.click()
    for summary in device.page.locator("details:not([open]) > summary").all():
        if summary.is_visible():
            summary.click()
    assert device.page.evaluate(CONTROLS) == []


@pytest.mark.parametrize("width", [320, 390])
def test_text_twice_as_large_still_fits(device, width) -> None:
    device.page.set_viewport_size({"width": width, "height": 844})
    device.page.evaluate("document.documentElement.style.fontSize = '200%'")
    device.log_set("2")
    wide = device.page.evaluate("document.documentElement.scrollWidth")
    assert wide <= width


def test_the_keyboard_alone_logs_a_set(device) -> None:
    page = device.page
    page.locator("#now-0-own-load").focus()
    for key in ("Tab", "Tab", "Tab", "Tab", "Tab", "Space"):
        page.keyboard.press(key)
    while page.evaluate("document.activeElement.className") != "main log":
        page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(section(device).locator(".said")).to_have_text(re.compile("Set 1: 60 kg"))


def test_invitation_pages_are_clean(server, browser, tokens, axe_violations) -> None:
    for scheme in ("light", "dark"):
        context = browser.new_context(viewport=SMALL, color_scheme=scheme)
        page = context.new_page()
        page.goto(f"{server.address}/join/{tokens[1]}")
        assert axe_violations(page) == []
        page.goto(f"{server.address}/join/none")
        assert axe_violations(page) == []
        context.close()
