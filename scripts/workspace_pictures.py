"""Take the pictures of the workspace that the pages in docs show, at three sizes.

    python scripts/workspace_pictures.py [FOLDER]

Opens `setwright serve --demo`, goes through its pages in the system's chromium and keeps them as
FOLDER/PAGE-SIZE.png (docs/pictures/workspace by default). Sixty-four colours are enough for pages
without photographs.
"""

from __future__ import annotations

import io
import re
import shutil
import socket
import subprocess
import sys
import tempfile
import time
from datetime import date, timedelta
from pathlib import Path

from PIL import Image
from playwright.sync_api import BrowserContext, Page, sync_playwright

SIZES = {"desk": (1440, 900), "tablet": (820, 1180), "phone": (390, 844)}
CLIENT = "Tove"
ROOT = Path(__file__).parents[1]
BROWSERS = ("chromium", "chromium-browser", "google-chrome")
FLAGS = ("--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-sync")


def main(folder: Path) -> None:
    """Serve the demo, take the pictures, stop it."""
    folder.mkdir(parents=True, exist_ok=True)
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    command = [Path(sys.executable).with_name("setwright"), "serve", "--demo", "--port", str(port)]
    with tempfile.NamedTemporaryFile() as said:
        server = subprocess.Popen(command, stdout=said, stderr=said)
        try:
            words = _wait_for(Path(said.name), server)
            _pictures(f"http://127.0.0.1:{port}", words, folder)
        finally:
            server.terminate()
            server.wait(30)


def _wait_for(said: Path, server: subprocess.Popen[bytes]) -> str:
    """What the server says on its way, once it is open."""
    while "is open at" not in (words := said.read_text()):
        if server.poll() is not None:
            raise SystemExit(f"the server ended: {words}")
        time.sleep(0.1)
    return words


def _pictures(base: str, words: str, folder: Path) -> None:
    email, password = re.search(r"as (\S+) with the password (\S+)", words).groups()
    invitation = re.search(r"(/join/\S+)", words).group(1)
    with sync_playwright() as driver:
        found = next(filter(None, map(shutil.which, BROWSERS)))
        browser = driver.chromium.launch(executable_path=found, args=list(FLAGS))
        coach, client = browser.new_context(base_url=base), browser.new_context(base_url=base)
        start = coach.new_page()
        start.goto("/sign-in")
        start.get_by_label("Email").fill(email)
        start.get_by_label("Password").fill(password)
        start.get_by_role("button", name="Sign in").click()
        start.wait_for_load_state("networkidle")
        here = start.get_by_role("link", name=CLIENT, exact=True).get_attribute("href")
        phone = client.new_page()
        phone.goto(invitation)
        phone.locator("main button").click()
        phone.wait_for_selector("html.awake")
        monday = date.today() - timedelta(days=date.today().weekday())
        week = f"{here}/weeks/{monday}"
        pages = {
            "roster": "/clients",
            "client": here,
            "intake": f"{here}/intake",
            "review": f"{here}/review?week={monday - timedelta(days=7)}",
            "board": f"{week}?at=0.0",
            "hand-out": f"{week}/share",
        }
        for size, (width, height) in SIZES.items():
            for name, address in pages.items():
                page = _open(coach, address, width, height)
                _keep(page, folder / f"{name}-{size}.png")
            page = _open(client, "/today", width, height)
            page.wait_for_selector("html.awake")
            if (later := page.locator("details#then > summary")).count():
                later.first.click()
            page.wait_for_timeout(500)
            _keep(page, folder / f"today-{size}.png")


def _open(context: BrowserContext, address: str, width: int, height: int) -> Page:
    page = context.new_page()
    page.set_viewport_size({"width": width, "height": height})
    page.goto(address)
    page.wait_for_load_state("networkidle")
    return page


def _keep(page: Page, path: Path) -> None:
    with Image.open(io.BytesIO(page.screenshot())) as shot:
        shot.convert("RGB").quantize(64, dither=Image.Dither.NONE).save(path, optimize=True)
    page.close()


if __name__ == "__main__":
    main(Path(sys.argv[1]) if sys.argv[1:] else ROOT / "docs" / "pictures" / "workspace")
