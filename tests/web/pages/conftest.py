"""One of every page: an invented practice on a Wednesday that does not move."""

import uuid
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, timedelta

import pytest
from django.conf import settings
from django.test import Client as Browser
from django.urls import reverse
from phone_practice import plan_text, send_week
from playwright.sync_api import Page

from setwright.plan.log import Pain, SetRecord
from setwright.web.api.tokens import make_token
from setwright.web.engine.append import append_records
from setwright.web.models import Account, Client, IntakeVersion, PlanVersion, Week
from setwright.web.phone.invitations import invite_client
from setwright.web.sharing.links import make_link
from setwright.web.sharing.team import invite_coach

NOW = datetime(2026, 9, 9, 18, tzinfo=UTC)
THIS, LAST = date(2026, 9, 7), date(2026, 8, 31)
# The phone's page when its script has done its work, or has none to do.
READY = "html.awake, .stopped, h1:text('Nothing here yet')"
WEDNESDAY, THURSDAY, SATURDAY = 2, 3, 5


@dataclass(frozen=True)
class Place:
    """A page: what it is called here, its address, who opens it, and the status it answers."""

    name: str
    address: str
    who: str = "coach"
    status: int = 200


@dataclass
class World:
    """Accounts by what they are called here, and every page they can open."""

    accounts: dict[str, Account | None] = field(default_factory=lambda: {"nobody": None})
    places: list[Place] = field(default_factory=list)

    def of(self, who: str) -> list[Place]:
        """Pages that one account opens."""
        return [one for one in self.places if one.who == who]

    def add(self, who: str, status: int = 200, **addresses: str) -> None:
        """Pages of an account by their names."""
        self.places += [
            Place(name.replace("_", " "), address, who, status)
            for name, address in addresses.items()
        ]


@pytest.fixture
def clock(monkeypatch) -> None:
    """Every moment of the server is the same."""
    monkeypatch.setattr("django.utils.timezone.now", lambda: NOW)


def trained(exercise: str, monday: date, symptom: str = "", pain: int = 0) -> list[SetRecord]:
    """Three sets of an exercise on the Wednesday of a week."""
    at = datetime.combine(monday + timedelta(WEDNESDAY), datetime.min.time())
    return [
        SetRecord(
            id=str(uuid.uuid4()),
            at=at + timedelta(hours=17, minutes=4 * number),
            exercise=exercise,
            load_kg=60.0,
            reps=9 - number,
            rir=2,
            number=number,
            pain=Pain(where="left shoulder", level=pain) if pain and number == 3 else None,
            symptoms=(symptom,) if symptom and number == 3 else (),
        )
        for number in (1, 2, 3)
    ]


@pytest.fixture
def joined(practice, coach) -> Callable[[str], Client]:
    """Make a client with an intake and a phone."""
    from ..conftest import INTAKE, account

    def made(name: str) -> Client:
        phone = account(practice, "client", name)
        found = Client.objects.create(organisation=practice, coach=coach, account=phone, name=name)
        IntakeVersion.objects.create(client=found, number=1, text=INTAKE, made_by=coach)
        return found

    return made


@pytest.fixture
def world(transactional_db, clock, practice, owner, coach, person, joined) -> World:
    """The practice with every page there is."""
    send_week(person, plan_text(WEDNESDAY, SATURDAY), LAST)
    week = send_week(person, plan_text(WEDNESDAY, SATURDAY), THIS)
    later = plan_text(THURSDAY, SATURDAY).replace("6-10", "5-8")
    week.current = PlanVersion.objects.create(
        week=week, number=2, text=later, what="another day", parent=week.current, made_by=coach
    )
    week.save()
    append_records(person, trained("barbell-bench-press", LAST, pain=6), person.account)
    append_records(person, trained("barbell-bench-press", LAST)[:1], person.account)
    Week.objects.create(client=person, starts=THIS + timedelta(7))
    resting, stopped, unsent = joined("Lis"), joined("Mar"), joined("Per")
    send_week(resting, plan_text(THURSDAY, SATURDAY), THIS)
    send_week(stopped, plan_text(WEDNESDAY, SATURDAY), THIS)
    append_records(stopped, trained("leg-press", THIS, symptom="dizziness"), stopped.account)
    Client.objects.create(organisation=practice, coach=coach, name="Ulf", archived_at=NOW)
    make_token(coach, "spreadsheet")
    ended = make_link(week.sent, coach, 5, NOW - timedelta(days=9))
    found = World()
    found.accounts |= {"owner": owner, "coach": coach, "client": person.account}
    found.accounts |= {one.name: one.account for one in (resting, stopped, unsent)}
    found.add(
        "nobody",
        sign_in=reverse("sign-in"),
        invitation=reverse("join", args=[invite_client(person, coach, False)[0]]),
        team_invitation=reverse("join-team", args=[invite_coach(owner, NOW)]),
        shared_week=reverse("shared", args=[make_link(week.sent, coach, 5, NOW)]),
    )
    found.add(
        "nobody",
        404,
        invitation_spent=reverse("join", args=["spent"]),
        team_invitation_spent=reverse("join-team", args=["spent"]),
        shared_week_ended=reverse("shared", args=[ended]),
        nowhere="/nowhere",
    )
    found.add("owner", team=reverse("team"), whole_trail=reverse("trail-all"))
    found.add("client", today=reverse("today"))
    for one in (resting, stopped, unsent):
        found.add(one.name, **{f"today_of_{one.name}": reverse("today")})
    found.add("coach", **_of_the_coach(person.uuid))
    return found


def _of_the_coach(client: uuid.UUID) -> dict[str, str]:
    def of(name: str, *more: object) -> str:
        return reverse(name, args=[client, *more])

    board = of("board", THIS)
    return {
        "roster": reverse("roster"),
        "archived": reverse("roster") + "?archived",
        "import": reverse("import"),
        "tokens": reverse("tokens"),
        "account": reverse("password"),
        "client": of("client"),
        "intake": of("intake"),
        "intake_document": of("intake-document"),
        "intake_import": of("intake-import"),
        "intake_version": of("intake-version", 1),
        "review": of("review"),
        "weeks": of("weeks"),
        "board": board,
        "substitutes": f"{board}?at=0.1&show=substitutes",
        "search": f"{board}?session=0&q=curl",
        "a_new_day": f"{board}?add=day&q=squat",
        "empty_board": of("board", THIS + timedelta(7)),
        "versions": of("board-versions", THIS),
        "compare": of("board-compare", THIS) + "?a=1&b=2",
        "design": of("board-design", THIS),
        "invite": of("invite"),
        "hand_out": of("share", THIS),
        "documents": of("documents"),
        "erase": of("erase"),
        "trail": of("trail"),
    }


@pytest.fixture
def visit(live_server, open_page: Callable[..., Page]) -> Callable[..., Page]:
    """A browser of an account, whose clock stands still as the server's does."""

    def opened(account: Account | None = None, **wishes) -> Page:
        page = open_page(timezone_id="Etc/UTC", base_url=live_server.url, **wishes)
        page.clock.set_fixed_time(NOW)
        if account is not None:
            browser = Browser()
            browser.force_login(account)
            name = settings.SESSION_COOKIE_NAME
            value = browser.cookies[name].value
            page.context.add_cookies([{"name": name, "value": value, "url": live_server.url}])
        return page

    return opened


@pytest.fixture
def every_page(world: World, visit) -> Callable[..., Iterator[tuple[Place, Page]]]:
    """Open every page in turn, with everything on it unfolded."""

    def opened(
        watch: Callable[[Page], object] = lambda page: None,
        only: set[str] | None = None,
        **wishes,
    ) -> Iterator[tuple[Place, Page]]:
        for who, account in world.accounts.items():
            page = visit(account, **wishes)
            watch(page)
            for place in world.of(who):
                if only is not None and place.name not in only:
                    continue
                answer = page.goto(place.address)
                assert answer is not None and answer.status == place.status, place
                if place.name.startswith("today"):
                    page.locator(READY).first.wait_for(state="attached")
                page.evaluate("document.querySelectorAll('details').forEach((o) => o.open = true)")
                yield place, page
            page.context.close()

    return opened
