"""The coach's pages in a real browser: by mouse, by keyboard only, without a script."""

import pytest
from django.urls import reverse
from playwright.sync_api import expect

from setwright.plan.decision import Decision
from setwright.plan.read import read_intake
from setwright.web.engine.folder import plan_of
from setwright.web.models import Client, IntakeVersion, Week

from .conftest import LAST, THIS

SIZES = {"desk": (1440, 900), "phone": (390, 844)}
PAGES = ("roster", "client", "review", "intake", "intake-document", "intake-import", "version")

# Every page once wide and light, once narrow and dark; the main ones in every combination.
WHOLE = {("desk", "light"), ("phone", "dark")}


def address(client, page="client", **words):
    if page == "roster":
        return reverse("roster")
    if page == "version":
        return reverse("intake-version", kwargs={"client": client.uuid, "number": 1})
    return reverse(page, kwargs={"client": client.uuid, **words})


def first_proposal(page):
    return page.locator(".proposal").first


def test_from_the_roster_to_the_next_week(open_at, hurting, practice, coach) -> None:
    Client.objects.create(organisation=practice, coach=coach, name="Pia")
    page = open_at(reverse("roster"))
    page.get_by_label("Find by name").press_sequentially("od")
    expect(page.get_by_role("link", name="Pia")).to_have_count(0)
    page.get_by_role("link", name="Oda", exact=True).click()
    page.get_by_role("link", name="Review the week").click()
    proposal = first_proposal(page)
    expect(proposal).to_contain_text("Leave out Barbell bench press, which hurts")
    proposal.get_by_label("Reason").fill("it hurts")
    proposal.get_by_role("button", name="Accept", exact=True).click()
    expect(page.locator(".outcome")).to_contain_text("Accepted on Wednesday 25 November. it hurts")
    expect(page.locator(".outcome")).to_be_focused()
    expect(page.locator("#decisions")).to_contain_text("A draft: the client does not see it yet.")
    second = page.locator(".proposal").nth(1)
    second.get_by_role("button", name="Decline").click()
    expect(page.locator(".outcome")).to_have_count(2)
    page.get_by_role("button", name="Send the week").click()
    expect(page.locator("#decisions")).to_contain_text("Out since 25 November")
    assert [Decision.model_validate_json(one.text).choice for one in hurting.decisions.all()] == [
        "accept",
        "decline",
    ]
    sent = Week.objects.get(client=hurting, starts=THIS)
    assert sent.sent == sent.current is not None


def test_an_edit_is_refused_at_its_field_and_then_taken(open_at, hurting) -> None:
    page = open_at(address(hurting, "review"))
    first_proposal(page).get_by_text("Accept with changes").click()
    page.get_by_label("Exercise instead").fill("a press of mine")
    page.get_by_role("button", name="Accept as changed").first.click()
    expect(page.locator(".error")).to_contain_text("Exercise instead: found 'a press of mine'")
    field = first_proposal(page).get_by_label("Exercise instead")
    expect(field).to_be_focused()
    expect(field).to_have_value("a press of mine")
    field.fill("Machine chest press")
    first_proposal(page).get_by_role("button", name="Accept as changed").click()
    expect(page.locator(".outcome")).to_contain_text("Accepted with changes")
    plan = plan_of(Week.objects.get(starts=THIS).current.text)
    assert "machine-chest-press" in [e.exercise for e in plan.sessions[0].exercises]


def tab_to(page, **what) -> None:
    """Press Tab until the focus is on something."""
    target = page.get_by_role(what["role"], name=what["name"], exact=True).first
    for _ in range(80):
        if target.evaluate("node => node === document.activeElement"):
            return
        page.keyboard.press("Tab")
    raise AssertionError(f"Tab never comes to {what}")


def test_a_decision_by_keyboard_only(open_at, hurting) -> None:
    page = open_at(address(hurting, "review"))
    tab_to(page, role="textbox", name="Reason (kept with the decision)")
    page.keyboard.type("rest it")
    page.keyboard.press("Enter")
    page.wait_for_timeout(300)
    assert not hurting.decisions.exists(), "Enter in a field decides nothing"
    tab_to(page, role="button", name="Accept")
    page.keyboard.press("Enter")
    expect(page.locator(".outcome")).to_be_focused()
    page.keyboard.press("Tab")
    expect(page.locator(":focus")).to_have_text("Decide anew")
    page.keyboard.press("Enter")
    tab_to(page, role="button", name="Decline")
    page.keyboard.press("Space")
    expect(page.locator(".outcome")).to_contain_text("Declined")
    assert hurting.decisions.count() == 2


def test_a_client_and_an_intake_by_keyboard_only(open_at, coach) -> None:
    page = open_at(reverse("roster"))
    page.keyboard.press("Tab")
    expect(page.locator(":focus")).to_have_text("Skip to the content")
    for _ in range(12):
        page.keyboard.press("Tab")
        if page.locator(":focus").inner_text() == "Add a client":
            break
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    page.keyboard.type("Pia")
    page.keyboard.press("Enter")
    expect(page).to_have_title("Intake of Pia · Setwright")
    tab_to(page, role="radio", name="Yes")
    page.keyboard.press("Space")
    tab_to(page, role="textbox", name="Tuesday, minutes")
    page.keyboard.type("50")
    tab_to(page, role="button", name="Add an aim")
    page.keyboard.press("Enter")
    page.keyboard.type("side delts")
    page.keyboard.press("Enter")
    expect(page.locator(".messages")).to_contain_text("The intake is saved (version 1).")
    intake = read_intake(IntakeVersion.objects.get().text, "x")
    assert intake.name == "Pia" and intake.aims.emphasise == ("side delts",)
    assert [(one.day, one.minutes) for one in intake.days] == [("tuesday", 50)]


def test_suggestions_follow_what_is_avoided(open_at, person) -> None:
    page = open_at(address(person, "intake"))
    row = page.locator("[data-rows=avoid] .row").first
    expect(row.get_by_label("Which")).to_have_attribute("list", "exercises")
    row.get_by_label("Avoid").select_option("pattern")
    expect(row.get_by_label("Which")).to_have_attribute("list", "patterns")
    assert page.locator("#patterns option[value='vertical press']").count() == 1


def test_rows_are_added_and_taken_away_in_place(open_at, person) -> None:
    page = open_at(address(person, "intake"))
    loads = page.locator("[data-rows=loads]")
    for name, load in (("Leg press", "120"), ("Lat pulldown", "55")):
        page.get_by_role("button", name="Add a known load").click()
        row = loads.locator(".row:visible").last
        row.get_by_label("Exercise").fill(name)
        row.get_by_label("Load").fill(load)
        row.get_by_label("Repetitions").fill("8")
    loads.get_by_role("button", name="Remove a known load").nth(-2).click()
    page.get_by_role("button", name="Save the intake").click()
    expect(page.locator(".messages")).to_contain_text("version 2")
    kept = read_intake(person.intakes.get(number=2).text, "x").known_loads
    assert [(one.exercise, one.load_kg) for one in kept] == [("lat-pulldown", 55)]


def test_what_is_wrong_leads_to_its_field(open_at, person) -> None:
    page = open_at(address(person, "intake"))
    page.get_by_label("Monday, minutes").fill("900")
    page.get_by_role("button", name="Save the intake").click()
    problem = page.get_by_role("alert")
    expect(problem).to_be_focused()
    problem.get_by_role("link", name="Monday, minutes").click()
    field = page.get_by_label("Monday, minutes")
    expect(field).to_have_attribute("aria-invalid", "true")
    described = field.get_attribute("aria-describedby").split()[-1]
    expect(page.locator(f"#{described}")).to_contain_text("Found 900")


def test_all_of_it_without_a_script(open_at, hurting) -> None:
    page = open_at(address(hurting, "review"), java_script_enabled=False)
    first_proposal(page).get_by_role("button", name="Accept", exact=True).click()
    expect(page.locator(".outcome")).to_contain_text("Accepted")
    page.get_by_role("button", name="Send the week").click()
    expect(page.locator("#decisions")).to_contain_text("Out since")
    page.goto(page.url.partition("/clients")[0] + address(hurting, "intake"))
    before = page.locator("[data-rows=kit] .row").count()
    page.get_by_role("button", name="Add kit").click()
    assert page.locator("[data-rows=kit] .row").count() > before
    page.locator("[name=kit-0-kit]").select_option("rack")
    page.get_by_role("button", name="Save the intake").click()
    expect(page.locator(".messages")).to_contain_text("version 2")
    assert read_intake(hurting.intakes.get(number=2).text, "x").kit[0].kit == "rack"


def open_everything(page) -> None:
    page.evaluate("for (const one of document.querySelectorAll('details')) one.open = true")


@pytest.mark.parametrize("colours", ["light", "dark"])
@pytest.mark.parametrize("size", SIZES)
def test_nothing_against_the_guidelines(open_at, axe_violations, hurting, size, colours) -> None:
    width, height = SIZES[size]
    wishes = {"viewport": {"width": width, "height": height}, "color_scheme": colours}
    page = open_at(reverse("roster"), **wishes)
    origin = page.url.partition("/clients")[0]
    for name in PAGES if (size, colours) in WHOLE else PAGES[:3]:
        page.goto(origin + address(hurting, name))
        open_everything(page)
        assert axe_violations(page) == [], name
        assert page.evaluate("document.documentElement.scrollWidth") <= width, name


def test_nothing_against_the_guidelines_where_something_is_wrong(
    open_at, axe_violations, story
) -> None:
    story.symptom = (LAST, "lat-pulldown")
    client = story.tell()
    page = open_at(address(client, "intake"))
    page.get_by_label("Monday, minutes").fill("900")
    page.locator("[name=kit-0-bar_kg]").fill("20")
    page.get_by_role("button", name="Save the intake").click()
    expect(page.get_by_role("alert")).to_be_visible()
    assert axe_violations(page) == []
    page.goto(page.url.partition("/clients")[0] + address(client, "review"))
    expect(page.locator(".stop")).to_be_visible()
    assert axe_violations(page) == []


# Elements whose words do not fit into them and cannot be scrolled to either.
CUT_OFF = """() => [...document.querySelectorAll('main *')].filter((node) => {
  if (node.closest('.visually-hidden, input, select')) return false;
  const style = getComputedStyle(node);
  return node.clientWidth > 2 && ['hidden', 'clip'].includes(style.overflowX)
    && (node.scrollWidth > node.clientWidth + 1 || node.scrollHeight > node.clientHeight + 1);
}).map((node) => node.outerHTML.slice(0, 120))"""


@pytest.mark.parametrize("name", PAGES)
def test_text_at_twice_its_size_loses_nothing(open_at, hurting, name) -> None:
    page = open_at(address(hurting, name), viewport={"width": 1280, "height": 900})
    open_everything(page)
    page.evaluate("document.documentElement.style.setProperty('font-size', '200%')")
    assert page.evaluate("document.documentElement.scrollWidth") <= 1280
    assert page.evaluate(CUT_OFF) == []


def test_the_content_policy_is_kept(open_at, hurting) -> None:
    said: list[str] = []
    page = open_at(reverse("roster"))
    page.on("console", lambda one: said.append(one.text) if one.type == "error" else None)
    origin = page.url.partition("/clients")[0]
    for name in PAGES:
        page.goto(origin + address(hurting, name))
        page.wait_for_load_state("networkidle")
    assert said == []
