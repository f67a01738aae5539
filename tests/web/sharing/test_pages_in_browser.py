"""The pages of sharing in a browser: nothing for axe to find, none wider than the screen."""

import os

import pytest
from django.utils import timezone

from setwright.web.api.tokens import make_token
from setwright.web.sharing.links import make_link
from setwright.web.sharing.team import invite_coach

SIZES = ((1440, 900), (820, 1180), (390, 844))
WIDEST = "document.documentElement.scrollWidth <= document.documentElement.clientWidth"


@pytest.fixture
def visit(live_server, open_page, client, week, owner, coach, settings):
    """Open an address as one of the accounts."""
    os.environ["DJANGO_ALLOW_ASYNC_UNSAFE"] = "true"

    def opened(address, account=None, **wishes):
        page = open_page(**wishes)
        if account is not None:
            client.force_login(account)
            cookie = client.cookies["sessionid"].value
            page.context.add_cookies(
                [{"name": "sessionid", "value": cookie, "url": live_server.url}]
            )
        faults = []
        page.on("pageerror", lambda error: faults.append(str(error)))
        page.on("console", lambda said: said.type == "error" and faults.append(said.text))
        answer = page.goto(live_server.url + address)
        return page, answer, faults

    return opened


def addresses(week, coach, owner):
    now = timezone.now()
    make_token(coach, "spreadsheet")
    client = f"/clients/{week.client.uuid}"
    return [
        (f"{client}/weeks/{week.starts}/share", coach),
        (f"{client}/documents", coach),
        (f"{client}/erase", coach),
        (f"{client}/trail", coach),
        ("/clients/import", coach),
        ("/tokens", coach),
        ("/password", coach),
        ("/team", owner),
        ("/trail", owner),
        (f"/s/{make_link(week.current, coach, 5, now)}", None),
        (f"/team/join/{invite_coach(owner, now)}", None),
        ("/sign-in", None),
    ]


@pytest.mark.parametrize(("scheme", "sizes"), [("light", SIZES), ("dark", SIZES[::-1])])
def test_axe_finds_nothing_and_no_page_is_wider_than_its_screen(
    visit, axe_violations, week, coach, owner, scheme, sizes
):
    for address, account in addresses(week, coach, owner):
        width, height = sizes[0]
        page, answer, faults = visit(
            address, account, viewport={"width": width, "height": height}, color_scheme=scheme
        )
        assert answer.status == 200, address
        assert axe_violations(page) == [], (address, width)
        for width, height in sizes:
            page.set_viewport_size({"width": width, "height": height})
            assert page.evaluate(WIDEST), (address, width)
        assert faults == [], (address, faults)
        page.context.close()


def test_a_link_is_made_and_ended_by_keyboard_alone(visit, week, coach, live_server):
    page, _, _ = visit(f"/clients/{week.client.uuid}/weeks/{week.starts}/share", coach)
    page.get_by_label("Days until the link ends").focus()
    page.keyboard.press("Control+A")
    page.keyboard.type("3")
    page.keyboard.press("Enter")
    field = page.get_by_label("Copy it now")
    shared = field.input_value()
    assert shared.startswith(f"{live_server.url}/s/")
    field.focus()
    assert (
        page.evaluate("document.getSelection().toString() || document.activeElement.value")
        == shared
    )
    page.get_by_role("link", name="Links of the week").press("Enter")
    page.get_by_role("button", name="End it").press("Enter")
    page.get_by_text("ended on").wait_for()
    assert page.goto(shared).status == 404


def test_the_shared_week_shows_its_picture(visit, week, coach):
    page, _, _ = visit(f"/s/{make_link(week.current, coach, 5, timezone.now())}")
    page.wait_for_load_state("networkidle")
    sizes = page.eval_on_selector_all("img.week", "all => all.map(one => one.naturalWidth)")
    assert sizes
    assert all(sizes)
