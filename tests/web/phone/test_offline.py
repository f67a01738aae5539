"""No set is lost and none arrives twice: without a network, with what dies dying."""

from phone_practice import today
from playwright.sync_api import expect


def working(server) -> list[dict]:
    return [one for one in server.records(today().isoformat()) if one["kind"] == "set"]


def keys(sets) -> list[tuple]:
    return sorted((one["exercise"], one["number"]) for one in sets)


ALL = [
    ("barbell-bench-press", 1),
    ("barbell-bench-press", 2),
    ("barbell-bench-press", 3),
    ("cable-lateral-raise", 1),
    ("cable-lateral-raise", 2),
    ("one-arm-dumbbell-row", 1),
    ("one-arm-dumbbell-row", 2),
    ("triceps-pushdown", 1),
    ("triceps-pushdown", 2),
]
PELL = """
from setwright.web.models import Account, Client, Organisation
from setwright.web.phone.invitations import invite_client
coach = Account.objects.get(role="coach")
pell = Client.objects.create(organisation=coach.organisation, coach=coach, name="Pell")
print(invite_client(pell, coach, False)[0])
"""


def test_a_session_in_a_basement_with_a_phone_that_dies(server, device) -> None:
    phone = device
    server.stop()
    phone.context.set_offline(True)
    assert phone.log_everything() == len(ALL)
    phone.says("9 sets wait for a network.")
    phone.page.reload()
    phone.page.wait_for_selector("html.awake")
    assert phone.logged == len(ALL)
    phone.kill()
    phone.open()
    phone.look()
    assert phone.logged == len(ALL)
    phone.says("9 sets wait for a network.")
    assert working(server) == []
    server.start()
    phone.says("All sent.")
    assert keys(working(server)) == ALL
    phone.page.reload()
    phone.page.wait_for_selector("html.awake")
    assert phone.logged == len(ALL)
    assert keys(working(server)) == ALL


def test_a_server_that_dies_between_keeping_and_answering(server, device) -> None:
    phone = device
    server.die_before_answering()
    phone.log_set()
    server.died()
    assert keys(working(server)) == ALL[:1]
    phone.says("1 set waits for a network.")
    phone.log_set()
    server.start()
    phone.says("All sent.")
    assert keys(working(server)) == ALL[:2]
    assert phone.logged == 2


def test_two_phones_log_the_same_session(server, device, phones, tokens) -> None:
    one, other = device, phones()
    other.join(tokens[1])
    server.stop()
    for phone in (one, other):
        phone.log_set()
        phone.log_set()
    server.start()
    for phone in (one, other):
        phone.says("All sent.")
    assert keys(working(server)) == sorted(2 * ALL[:2])
    one.look()
    expect(one.page.locator("#now-0-own .twice")).to_have_count(4)
    assert one.logged == 4
    one.page.get_by_role("button", name="Take back").first.click()
    expect(one.page.locator("#now-0-own .twice")).to_have_count(2)
    one.says("All sent.")
    other.look()
    expect(other.page.locator("#now-0-own .done > li")).to_have_count(3)


def test_signed_out_in_the_basement(server, device, tokens) -> None:
    phone = device
    server.stop()
    phone.log_set()
    server.change("DELETE FROM django_session")
    server.start()
    phone.says("Signed out. 1 set waits on this phone: ask your coach for a new link.")
    assert working(server) == []
    phone.join(tokens[1])
    phone.says("All sent.")
    assert keys(working(server)) == ALL[:1]


def test_what_the_server_refuses_stays_and_is_shown(server, device) -> None:
    phone = device

    def spoil(route) -> None:
        route.continue_(post_data=route.request.post_data.replace('"reps":8', '"reps":"many"'))

    phone.page.route("**/today/sync", spoil)
    phone.log_set()
    phone.says("All sent. 1 not taken, see below.")
    assert "reps" in phone.page.locator("#refused li").inner_text()
    assert working(server) == []
    phone.page.unroute("**/today/sync")
    phone.page.get_by_role("button", name="Send it once more").click()
    phone.says("All sent.")
    assert keys(working(server)) == ALL[:1]


def test_signing_out_leaves_nothing_of_the_person(server, device) -> None:
    phone = device
    phone.log_set()
    phone.says("All sent.")
    phone.page.locator("details.device > summary").click()
    phone.page.get_by_role("button", name="Sign out").click()
    phone.page.wait_for_url("**/sign-in**")
    left = phone.page.evaluate(
        """async () => {
          const open = (name) => new Promise((done) => {
            const asked = indexedDB.open(name);
            asked.onsuccess = () => done(asked.result);
          });
          const database = await open("setwright-phone");
          const count = (store) => new Promise((done) => {
            const asked = database.transaction(store).objectStore(store).count();
            asked.onsuccess = () => done(asked.result);
          });
          return [await count("records"), await count("days"), await caches.has("setwright-page")];
        }"""
    )
    assert left == [0, 0, False]


def test_the_phone_sends_in_the_background_when_the_page_is_closed(server, device) -> None:
    workers = device.context.new_page()
    session = device.context.new_cdp_session(workers)
    known = []
    session.on(
        "ServiceWorker.workerRegistrationUpdated", lambda told: known.extend(told["registrations"])
    )
    session.send("ServiceWorker.enable")
    server.stop()
    device.log_set()
    device.says("1 set waits for a network.")
    device.page.close()
    server.start()
    assert working(server) == []
    session.send(
        "ServiceWorker.dispatchSyncEvent",
        {
            "origin": server.address,
            "registrationId": known[-1]["registrationId"],
            "tag": "records",
            "lastChance": False,
        },
    )
    for _ in range(50):
        if working(server):
            break
        workers.wait_for_timeout(200)
    assert keys(working(server)) == ALL[:1]


def test_another_person_on_the_same_phone_sees_and_sends_nothing(server, device, tokens) -> None:
    token = server.run(PELL)
    server.stop()
    device.log_set()
    device.says("1 set waits for a network.")
    device.page.goto("about:blank")
    server.start()
    device.page.goto(f"{server.address}/join/{token}")
    device.page.get_by_role("button", name="Join on this phone").click()
    expect(device.page.get_by_role("heading", name="Nothing here yet")).to_be_visible()
    expect(device.page.locator("#ready")).to_have_text("The page opens without a network, too.")
    assert working(server) == []
    server.stop()
    device.page.reload()
    expect(device.page.get_by_role("heading", name="Nothing here yet")).to_be_visible()
    server.start()
    device.page.goto(f"{server.address}/join/{tokens[1]}")
    device.page.get_by_role("button", name="Join on this phone").click()
    device.says("All sent.")
    assert keys(working(server)) == ALL[:1]
