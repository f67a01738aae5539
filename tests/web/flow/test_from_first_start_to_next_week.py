"""The whole way once, in a real browser: from an empty workspace to the second week."""

import re
from datetime import date

import pytest
from playwright.sync_api import Page, expect

from setwright.plan.log import SetRecord
from setwright.plan.read import read_intake
from setwright.web.engine.folder import plan_of, record_of
from setwright.web.models import Account, Client, DesignJob, Invitation, Week
from setwright.web.server.start_code import start_code

WORDS = "a long enough pass phrase"
MONDAY, NEXT = date(2026, 9, 7), date(2026, 9, 14)
pytestmark = pytest.mark.django_db(transaction=True)


def named(page: Page, role: str, name: str):
    """The one control that is called so."""
    return page.get_by_role(role, name=name, exact=True)


def tell(page: Page, **fields: str) -> None:
    """Fill in what a form asks by its labels."""
    for label, words in fields.items():
        page.get_by_label(label.replace("_", " ")).fill(words)


def heading(page: Page, words: str | re.Pattern[str]) -> None:
    """Wait for the page that is called so."""
    expect(page.get_by_role("heading", level=1)).to_have_text(words)


def first_start(page: Page) -> str:
    """The owner is made with the server's code and invites a coach; the invitation's address."""
    heading(page, "First start")
    page.get_by_label("Start code").fill(start_code())
    tell(page, Name_of_your_gym_or_practice="Tidewater Hall", Your_name="Runa")
    tell(page, Email="runa@example.org", Password=WORDS)
    named(page, "button", "Make the workspace").click()
    heading(page, "Clients")
    assert Account.objects.get().owns
    named(page, "link", "Team").click()
    named(page, "button", "Make an invitation").click()
    address = page.get_by_label("Copy it now").input_value()
    named(page, "button", "Sign out").click()
    heading(page, "Sign in")
    return address


def join_the_team(page: Page, address: str) -> None:
    """The coach's account, by the invitation."""
    page.goto(address)
    heading(page, "Coach at Tidewater Hall")
    tell(page, Your_name="Bram", Email="bram@example.org", Password=WORDS)
    named(page, "button", "Make my account").click()
    heading(page, "Clients")
    coach = Account.objects.get(name="Bram")
    assert (
        coach.role == "coach"
        and coach.organisation == Account.objects.get(name="Runa").organisation
    )
    assert page.goto(address).status == 404, "an invitation works once"
    heading(page, "This invitation is over")


def add_a_client(page: Page) -> Client:
    """A client, and the intake on its form."""
    named(page, "link", "Setwright").click()
    heading(page, "Clients")
    page.get_by_text("Add a client", exact=True).click()
    page.locator(".add").get_by_label("Name").fill("Oda")
    named(page, "button", "Add, and go on to the intake").click()
    heading(page, re.compile("Oda"))
    active = page.get_by_role("group", name="Active over the last three months")
    active.get_by_label("Yes").check()
    page.get_by_label("Experience").select_option("intermediate")
    page.get_by_label("Monday, minutes").fill("20")
    page.get_by_label("Thursday, minutes").fill("20")
    named(page, "button", "Save the intake").click()
    expect(page.locator(".messages")).to_contain_text("The intake is saved (version 1).")
    client = Client.objects.get()
    assert client.name == "Oda" and client.coach.name == "Bram"
    intake = read_intake(client.intakes.get().text, "intake")
    assert [(one.day, one.minutes) for one in intake.days] == [("monday", 20), ("thursday", 20)]
    return client


def on_board(page: Page, version: int) -> None:
    """Wait for a version on the board."""
    expect(page.locator("#board")).to_have_attribute("data-base", str(version))


def plan_on_board():
    """What the database holds of the first week's board."""
    return plan_of(Week.objects.get(starts=MONDAY).current.text)


def design_a_week(page: Page) -> None:
    """A week from the intake, by a real design in a process of its own."""
    named(page, "link", "Oda").click()
    heading(page, "Oda")
    named(page, "link", "Begin a week").click()
    heading(page, "Weeks of Oda")
    expect(page.get_by_label("Monday", exact=True).first).to_have_value("2026-09-07")
    page.get_by_label("Design it from the intake").check()
    named(page, "button", "Begin the week").click()
    heading(page, "Design the week of 7 September 2026")
    page.get_by_label("Seconds to search").fill("1")
    named(page, "button", "Design it").click()
    expect(page.locator(".card").first).to_be_visible(timeout=30_000)
    on_board(page, 1)
    assert DesignJob.objects.get().state == "done"
    assert [one.day for one in plan_on_board().sessions] == ["monday", "thursday"]


def edit_the_board(page: Page) -> None:
    """An exercise dragged to the other day, and a set more by a key."""
    before = plan_on_board()
    moved = before.sessions[1].exercises[0]
    page.locator("[data-session='1'] .card").first.hover()
    page.mouse.down()
    target = page.locator("[data-session='0'] .card").last.bounding_box()
    page.mouse.move(target["x"] + 30, target["y"] + target["height"] - 3, steps=6)
    expect(page.locator(".drop")).to_have_count(1)
    page.mouse.up()
    on_board(page, 2)
    assert moved.exercise in [one.exercise for one in plan_on_board().sessions[0].exercises]
    first = page.locator("[data-session='0'] .card").first
    first.focus()
    page.keyboard.press("+")
    on_board(page, 3)
    sets = plan_on_board().sessions[0].exercises[0].sets
    assert sets == before.sessions[0].exercises[0].sets + 1


def hand_out(page: Page) -> None:
    """The week is sent, and its handout fetched."""
    named(page, "button", "Send version 3").click()
    expect(page.locator(".sent")).to_have_text("Oda has this version.")
    week = Week.objects.get()
    assert week.sent == week.current and week.sent.number == 3
    named(page, "link", "Hand out").click()
    heading(page, "Hand out and share")
    with page.expect_download() as fetched:
        page.locator("a[download][href$='handout.ics']").click()
    assert fetched.value.suggested_filename.endswith(".ics")


def invite(page: Page) -> str:
    """The address that opens the phone's page."""
    named(page, "link", "Oda").first.click()
    heading(page, "Oda")
    named(page, "link", "Invite to the phone").click()
    named(page, "button", "Make the link").click()
    address = page.get_by_label("Link", exact=True).input_value()
    assert Invitation.objects.get(client__name="Oda").used_at is None
    return address


def texts(client: Client) -> list[str]:
    """The lines of the log."""
    return [one.text for one in client.log.all()]


def log_set(page: Page, place: int, hurts: bool) -> None:
    """The next set of the exercise at a place, as it is asked for."""
    logged = page.locator(".meeting[data-which=now] .done > li")
    before = logged.count()
    page.locator(".meeting[data-which=now] .steps button").nth(place).click()
    form = page.locator(".meeting[data-which=now] form.set:visible")
    expect(form).to_have_count(1)
    load = form.locator("[name=load]")
    if load.count() and load.input_value() == "":
        form.get_by_role("button", name="More load").click()
    form.get_by_role("radio", name="1", exact=True).check()
    if hurts:
        form.get_by_text("Pain, technique, drop set, note").click()
        form.get_by_label("Pain in the set, 0 to 10").select_option("6")
        form.get_by_label("Where it hurts").fill("left shoulder")
    form.locator("button.log").click()
    expect(logged).to_have_count(before + 1)
    # A second press so soon would be taken for a trembling thumb.
    page.clock.run_for(1000)


def train(page: Page, client: Client) -> None:
    """The whole session of Monday on the phone; its last set hurts."""
    named(page, "button", "Join on this phone").click()
    page.wait_for_selector("html.awake")
    assert Invitation.objects.get(client=client).used_at is not None
    session = plan_on_board().sessions[0]
    heading(page, session.name)
    wanted = [
        (place, entry.exercise, number)
        for place, entry in enumerate(session.exercises)
        for number in range(1, entry.sets + 1)
    ]
    for place, _, number in wanted:
        log_set(page, place, hurts=(place, number) == (wanted[-1][0], wanted[-1][2]))
    steps = page.locator(".meeting[data-which=now] .steps .over")
    expect(steps).to_have_count(len(session.exercises))
    expect(page.locator("#sync")).to_have_text("All sent.")
    expect(page.locator(".twice")).to_have_count(0)
    said = f"{len(wanted)} of {len(wanted)} sets done"
    expect(page.locator(".finish .sum").first).to_contain_text(said)
    records = [record_of(one) for one in texts(client)]
    assert all(isinstance(one, SetRecord) for one in records)
    assert [(one.exercise, one.number) for one in records] == [one[1:] for one in wanted]
    assert [one.pain.level for one in records if one.pain] == [6]
    assert {one.at.date() for one in records} == {MONDAY}


def review_and_send(page: Page, client: Client) -> None:
    """A week later: the coach signs in again, accepts what the pain proposes, and sends."""
    page.goto(page.url.partition("/clients")[0])
    heading(page, "Clients")
    named(page, "button", "Sign out").click()
    heading(page, "Sign in")
    tell(page, Email="bram@example.org", Password=WORDS)
    named(page, "button", "Sign in").click()
    heading(page, "Clients")
    named(page, "link", "Oda").click()
    heading(page, "Oda")
    named(page, "link", "Review the week").click()
    heading(page, "Oda: 7 September to 13 September 2026")
    proposal = page.locator(".proposal", has_text="which hurts").first
    proposal.get_by_label("Reason").fill("it hurts")
    named(proposal, "button", "Accept").click()
    expect(page.locator(".outcome").first).to_contain_text("Accepted")
    assert '"accept"' in client.decisions.get().text
    hurt = next(one.exercise for one in map(record_of, texts(client)) if one.pain)
    named(page, "button", "Send the week").click()
    expect(page.locator("#decisions")).to_contain_text("Out since 14 September, as it stands.")
    following = Week.objects.get(starts=NEXT)
    assert following.sent == following.current is not None
    left = [one.exercise for day in plan_of(following.sent.text).sessions for one in day.exercises]
    assert left and hurt not in left


def test_the_whole_way(desk, phone, calendar) -> None:
    page = desk()
    join_the_team(page, first_start(page))
    client = add_a_client(page)
    design_a_week(page)
    edit_the_board(page)
    hand_out(page)
    address = invite(page)
    calendar.turn(day=7, hour=18)
    small = phone(address)
    train(small, client)
    calendar.turn(day=14, hour=9)
    review_and_send(page, client)
    # The second week is what the phone shows now.
    small.clock.set_system_time(calendar.moment)
    small.goto(small.url)
    heading(small, plan_of(Week.objects.get(starts=NEXT).sent.text).sessions[0].name)
