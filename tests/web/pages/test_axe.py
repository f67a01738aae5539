"""Pages that are met seldom, against the guidelines: ends of links, refusals, days without work."""

import pytest
from playwright.sync_api import Page

from setwright.web.security import rates

LOOKS = {
    "desk": {"viewport": {"width": 1440, "height": 900}, "color_scheme": "light"},
    "phone": {"viewport": {"width": 390, "height": 844}, "color_scheme": "dark"},
}
# Every other page is looked at by the tests of its own room.
SELDOM = {
    "invitation", "invitation spent", "team invitation spent", "shared week ended", "nowhere",
    "today of Lis", "today of Mar", "today of Per", "archived", "empty board", "invite",
}  # fmt: skip
looks = pytest.mark.parametrize("look", LOOKS)


@looks
def test_pages_met_seldom(every_page, axe_violations, look) -> None:
    seen, wrong = set(), []
    for place, page in every_page(only=SELDOM, **LOOKS[look]):
        seen.add(place.name)
        wrong += [f"{place.name}: {one}" for one in axe_violations(page)]
    assert seen == SELDOM
    assert not wrong, "\n".join(wrong)


def refused(page: Page, status: int) -> None:
    """Send the page's form and get an answer that is no success."""
    with page.expect_response(lambda one: one.request.method == "POST") as got:
        page.locator("main form button").last.click()
    assert got.value.status == status
    page.wait_for_load_state()


@looks
def test_refusals(world, visit, axe_violations, monkeypatch, look) -> None:
    page = visit(**LOOKS[look])
    wrong = {}
    page.goto("/sign-in")
    refused(page, 422)
    wrong["sign-in refused"] = axe_violations(page)
    page.goto("/sign-in")
    page.context.clear_cookies()
    refused(page, 403)
    wrong["form had expired"] = axe_violations(page)
    for _ in range(rates.MOST):
        rates.too_often("join from 127.0.0.1")
    for address in ("/join/none", "/team/join/none"):
        assert page.goto(address).status == 429
        wrong[address] = axe_violations(page)

    def broken(*_: object) -> bool:
        raise RuntimeError("a fault of ours")

    monkeypatch.setattr(rates, "too_often", broken)
    assert page.goto("/join/none").status == 500
    wrong["a fault of ours"] = axe_violations(page)
    assert not any(wrong.values()), wrong


@looks
def test_what_is_shown_once(world, visit, axe_violations, look) -> None:
    wrong = {}
    for who, name, button in (
        ("coach", "invite", "Make the link"),
        ("coach", "hand out", "Make a link"),
        ("owner", "team", "Make an invitation"),
    ):
        page = visit(world.accounts[who], **LOOKS[look])
        page.goto(next(one.address for one in world.of(who) if one.name == name))
        page.get_by_role("button", name=button, exact=True).click()
        page.locator("input[readonly]").first.wait_for()
        wrong[name] = axe_violations(page)
        page.context.close()
    assert not any(wrong.values()), wrong


@looks
def test_first_start(transactional_db, visit, axe_violations, look) -> None:
    page = visit(**LOOKS[look])
    page.goto("/")
    assert page.url.endswith("/start")
    assert axe_violations(page) == []
    refused(page, 422)
    assert axe_violations(page) == []
