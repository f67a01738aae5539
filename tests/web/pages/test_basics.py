"""What every page has: language, title, one heading, small files, targets to hit, no faults."""

import gzip
from collections.abc import Callable

import pytest
from django.templatetags.static import static
from django.test import Client
from playwright.sync_api import Page, Request, Response

PHONE = {"width": 390, "height": 844}
# A page with its styles and scripts, compressed and without pictures.
MOST_BYTES = 100_000
MARKUP = """() => ({
  lang: document.documentElement.lang,
  title: document.title.trim().length > 0,
  headings: document.querySelectorAll('h1').length,
  viewport: document.querySelector('meta[name=viewport]')?.content ?? '',
})"""
SOUND = {
    "lang": "en",
    "title": True,
    "headings": 1,
    "viewport": "width=device-width, initial-scale=1",
}
# Target size (WCAG 2.5.8): 24 pixels each way, unless the target stands in a line of text, or a
# circle of 24 pixels around its middle touches no other target.
SMALL_TARGETS = """() => {
  const all = [...document.querySelectorAll(
    'a[href], button, summary, select, textarea, input:not([type=hidden])')]
    .filter((one) => one.checkVisibility({ visibilityProperty: true, opacityProperty: false }))
    .filter((one) => !one.closest('.visually-hidden, .skip'))
    .map((one) => one.matches('[type=radio], [type=checkbox]') && one.closest('label') || one)
    .map((one) => ({ one, box: one.getBoundingClientRect() }))
    .filter(({ box }) => box.width > 1 && box.height > 1);
  const small = (box) => box.width < 23.9 || box.height < 23.9;
  const inText = (one) => getComputedStyle(one).display === 'inline'
    && one.parentElement.textContent.trim() !== one.textContent.trim();
  const near = (mine, other) => {
    const x = mine.left + mine.width / 2, y = mine.top + mine.height / 2;
    if (small(other)) {
      return Math.hypot(x - other.left - other.width / 2, y - other.top - other.height / 2) < 24;
    }
    const dx = Math.max(other.left - x, 0, x - other.right);
    const dy = Math.max(other.top - y, 0, y - other.bottom);
    return Math.hypot(dx, dy) < 12;
  };
  return all.filter(({ one, box }) => small(box) && !inText(one)
      && all.some((other) => other.one !== one && !one.contains(other.one)
        && !other.one.contains(one) && near(box, other.box)))
    .map(({ one, box }) => `${Math.round(box.width)} x ${Math.round(box.height)} `
      + one.outerHTML.slice(0, 90));
}"""
LOW_BUTTONS = """() => [...document.querySelectorAll('main button, main .button, main summary')]
  .filter((one) => one.checkVisibility({ visibilityProperty: true }))
  .filter((one) => one.getBoundingClientRect().height < 44)
  .map((one) => one.outerHTML.slice(0, 90))"""


@pytest.fixture
def packed(client: Client) -> Callable[[str], int]:
    """Bytes of a file as the whole workspace answers it to a browser that unpacks."""
    known: dict[str, int] = {}

    def size(address: str) -> int:
        if address not in known:
            answer = client.get(address, headers={"Accept-Encoding": "gzip"})
            assert answer.status_code == 200, address
            body = b"".join(answer.streaming_content) if answer.streaming else answer.content
            known[address] = len(body)
        return known[address]

    return size


def faults_of(page: Page, expected: list[str]) -> list[str]:
    """What the page says on its console and what it fetches in vain, from now on."""
    said: list[str] = []

    def spoke(message) -> None:
        own = message.location.get("url", "") in expected and "Failed to load" in message.text
        if message.type in ("error", "warning") and not own:
            said.append(f"{message.type}: {message.text}")

    def answered(response: Response) -> None:
        if response.status >= 400 and response.url not in expected:
            said.append(f"{response.status}: {response.url}")

    def failed(request: Request) -> None:
        # Broken off by going on to the next page.
        if "ERR_ABORTED" not in (request.failure or ""):
            said.append(f"{request.failure}: {request.url}")

    page.on("console", spoke)
    page.on("pageerror", lambda error: said.append(str(error)))
    page.on("requestfailed", failed)
    page.on("response", answered)
    return said


def test_every_page_is_sound(world, visit, every_page, packed, live_server) -> None:
    wrong, watched, requests = [], {}, []
    expected = [f"{live_server.url}{one.address}" for one in world.places if one.status != 200]

    def watch(page: Page) -> None:
        watched[page] = faults_of(page, expected)
        page.on("request", lambda one: requests.append(one))

    for place, page in every_page(viewport=PHONE, has_touch=True, watch=watch):
        if place.name.startswith("today"):
            page.wait_for_load_state("networkidle")
        found = page.evaluate(MARKUP)
        wrong += [
            f"{place.name}: {key} {said}" for key, said in found.items() if said != SOUND[key]
        ]
        wrong += [f"{place.name}: {one}" for one in page.evaluate(SMALL_TARGETS)]
        if place.name.startswith(("today", "invitation")):
            wrong += [f"{place.name}: low {one}" for one in page.evaluate(LOW_BUTTONS)]
        wrong += [f"{place.name}: {one}" for one in watched[page]]
        files = {
            one.url.removeprefix(live_server.url)
            for one in requests
            if one.resource_type in ("script", "stylesheet")
        }
        weight = sum(map(packed, files)) + len(gzip.compress(page.content().encode()))
        if weight > MOST_BYTES:
            wrong.append(f"{place.name}: {weight} bytes")
        watched[page].clear()
        requests.clear()
    assert not wrong, "\n".join(wrong)


@pytest.mark.parametrize(
    "name", ["setwright/css/page.css", "setwright/js/rows.js", "django_htmx/htmx-2.min.js"]
)
def test_files_are_packed_and_kept_for_long(client, name) -> None:
    answer = client.get(static(name), headers={"Accept-Encoding": "gzip"})
    assert answer.status_code == 200
    assert answer["Content-Encoding"] == "gzip"
    assert "Accept-Encoding" in answer["Vary"]
    assert "max-age=31536000" in answer["Cache-Control"]
    body = b"".join(answer.streaming_content)
    plain = client.get(static(name))
    assert gzip.decompress(body) == b"".join(plain.streaming_content)
    assert len(body) < len(gzip.decompress(body)) / 2


@pytest.mark.parametrize(("wish", "moves"), [("reduce", False), ("no-preference", True)])
def test_nothing_moves_for_those_who_want_no_motion(visit, db, live_server, wish, moves) -> None:
    """Whatever a style or a script may wish for."""
    page = visit(reduced_motion=wish)
    page.goto("/sign-in")
    page.evaluate("document.querySelector('h1').style.setProperty('transition', 'color 5s')")
    page.evaluate("document.querySelector('h1').style.setProperty('color', 'red')")
    assert bool(page.evaluate("document.getAnimations().length")) is moves
