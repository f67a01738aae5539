"""A phone of a test: a browser with a memory of its own, that can be killed."""

from __future__ import annotations

import os
import signal
import time
from pathlib import Path

from playwright.sync_api import BrowserContext, BrowserType, Page, expect

WAIT_MS = 40_000
LINES = ".meeting[data-which=now] .done > li"


class Phone:
    """Chromium on a phone-sized screen, its memory in a folder."""

    def __init__(self, browsers: BrowserType, folder: Path, program: str, address: str) -> None:
        self.browsers, self.folder, self.program, self.address = browsers, folder, program, address
        self.context: BrowserContext | None = None
        self.open()

    def open(self) -> None:
        """Start the browser, with what it remembers."""
        self.context = self.browsers.launch_persistent_context(
            self.folder,
            executable_path=self.program,
            args=["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run"],
            viewport={"width": 390, "height": 844},
            has_touch=True,
        )
        self.page: Page = self.context.pages[0]
        self.page.set_default_timeout(15_000)

    def kill(self) -> None:
        """End every process of this browser at once, as a phone does that runs out of memory."""
        mark = f"--user-data-dir={self.folder}".encode()
        for one in Path("/proc").iterdir():
            try:
                if one.name.isdigit() and mark in (one / "cmdline").read_bytes():
                    os.kill(int(one.name), signal.SIGKILL)
            except (FileNotFoundError, ProcessLookupError, PermissionError):
                continue
        time.sleep(0.5)
        self.context = None

    def close(self) -> None:
        """End it in an orderly way."""
        if self.context is not None:
            self.context.close()
            self.context = None

    def join(self, token: str) -> None:
        """Open the invitation, and wait until the page is ready for a basement."""
        self.page.goto(f"{self.address}/join/{token}")
        self.page.get_by_role("button", name="Join on this phone").click()
        self.ready()

    def ready(self) -> None:
        """Wait until the page works without a network."""
        self.page.wait_for_selector("html.awake.offline-ready", timeout=WAIT_MS)

    def look(self) -> None:
        """Open the page of the day."""
        self.page.goto(f"{self.address}/today")
        self.page.wait_for_selector("html.awake", timeout=WAIT_MS)

    def says(self, words: str) -> None:
        """Wait for the state of the sending in words."""
        expect(self.page.locator("#sync")).to_have_text(words, timeout=WAIT_MS)

    def log_set(self, left: str = "2") -> None:
        """Log the set at hand as it is asked for."""
        section = self.page.locator(".work:visible").first
        lines = self.page.locator(LINES)
        before = lines.count()
        load = section.locator("[name=load]")
        if load.count() and load.input_value() == "":
            section.get_by_role("button", name="More load").click()
        section.get_by_role("radio", name=left, exact=True).check()
        section.locator("button.log").click()
        expect(lines).to_have_count(before + 1)
        # A second press so soon would be taken for a trembling thumb.
        self.page.wait_for_timeout(750)

    def log_everything(self) -> int:
        """Log every set of the session, exercise by exercise; how many there were."""
        count = 0
        steps = self.page.locator(".meeting[data-which=now] .steps button")
        asked = self.page.locator(".meeting[data-which=now] form.set:visible")
        for place in range(steps.count()):
            steps.nth(place).click()
            while asked.count():
                self.log_set()
                count += 1
        return count

    @property
    def logged(self) -> int:
        """Sets that the page shows as logged today."""
        return self.page.locator(LINES).count()
