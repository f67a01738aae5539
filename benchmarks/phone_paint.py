"""How soon the phone page shows the set that is due, on slow networks, with a warm cache.

A real server, a real browser with a joined phone's memory, and a network between them that is slow
for everything, the service worker's requests included. Times are the browser's own, from the start
of the navigation.
"""

from __future__ import annotations

import shutil
import statistics
import sys
import tempfile
from pathlib import Path

from playwright.sync_api import CDPSession, Page, sync_playwright

sys.path.insert(0, str(Path(__file__).parents[1] / "tests" / "support"))

from phone_device import Phone
from phone_server import Server, free_port
from slow_network import FAST_3G, SLOW_3G, SlowNetwork

TIMES = 11
# A phone of the middle class beside this machine, as browsers' developer tools put it.
SLOWER = 4
# The set that is due stands in the server's own page, so that it is there at the first paint.
READ = """() => new Promise((done) => {
  const look = () => {
    const paint = performance.getEntriesByName('first-contentful-paint')[0];
    const awake = document.documentElement.classList.contains('awake');
    if (!paint || !awake) return setTimeout(look, 20);
    const ask = document.querySelector('.ask').getBoundingClientRect();
    done([paint.startTime, performance.now(), ask.height > 0]);
  };
  look();
})"""


def visit(page: Page, measured: CDPSession, slower: int, address: str) -> tuple[float, float]:
    """First paint and when the page answers to the thumb, ms."""
    page.goto("about:blank")
    measured.send("Emulation.setCPUThrottlingRate", {"rate": slower})
    page.goto(f"{address}/today", wait_until="commit")
    paint, awake, asked = page.evaluate(READ)
    assert asked, "the set that is due is not shown"
    return paint, awake


def main() -> None:
    """Print the figures."""
    program = next(filter(None, map(shutil.which, ("chromium", "chromium-browser"))))
    with tempfile.TemporaryDirectory() as name, sync_playwright() as driver:
        folder = Path(name)
        (folder / "workspace").mkdir()
        behind = Server(folder / "workspace", free_port())
        token = behind.filled()[0]
        behind.start()
        front = free_port()
        address = f"http://127.0.0.1:{front}"
        with SlowNetwork(FAST_3G, behind.port, front):
            phone = Phone(driver.chromium, folder / "phone", program, address)
            phone.join(token)
            phone.close()
        for network in (FAST_3G, SLOW_3G):
            for slower in (1, SLOWER):
                with SlowNetwork(network, behind.port, front):
                    phone.open()
                    measured = phone.page.context.new_cdp_session(phone.page)
                    phone.look()
                    times = [visit(phone.page, measured, slower, address) for _ in range(TIMES)]
                    phone.close()
                tell(f"{network.name}, processor {slower} times slower", times)
        behind.stop()
        phone.open()
        measured = phone.page.context.new_cdp_session(phone.page)
        tell("no network", [visit(phone.page, measured, SLOWER, address) for _ in range(TIMES)])
        phone.close()


def tell(what: str, times: list[tuple[float, float]]) -> None:
    """One line of figures."""
    paints, awakes = zip(*times, strict=True)
    print(
        f"{what}: first paint with the set that is due {statistics.median(paints):.0f} ms "
        f"(worst {max(paints):.0f}; target 1000), answers after {statistics.median(awakes):.0f} ms"
    )


if __name__ == "__main__":
    main()
