"""The board after an edit: time on the server, time in a browser, size of the page.

A six-day week of eight exercises a day on an embedded database in a file. Run:
python benchmarks/board_speed.py (chromium on the path, or CHROMIUM, for the browser's part)
"""

from __future__ import annotations

import gzip
import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from datetime import date
from pathlib import Path
from typing import Any

TIMES, IN_BROWSER = 60, 24
MONDAY = date(2026, 9, 7)
DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday")
INTAKE = """\
setwright: intake/1
name: Oda
experience: intermediate
age_band: 18-39
screening: {active_last_3_months: yes}
days: [monday 75 min, tuesday 75 min, wednesday 75 min, thursday 75 min, friday 75 min,
       saturday 75 min]
aims: {emphasise: [chest]}
gym: full gym
"""
# Presses a key and waits until what it brought about has been laid out and painted.
PRESS = """(key) => new Promise((done) => {
  const card = document.querySelector('.card');
  card.focus();
  const base = document.getElementById('board').dataset.base;
  const begun = performance.now();
  card.dispatchEvent(new KeyboardEvent('keydown', {key, bubbles: true, cancelable: true}));
  const look = () => {
    if (document.getElementById('board').dataset.base === base) return setTimeout(look, 1);
    requestAnimationFrame(() => requestAnimationFrame(() => done(performance.now() - begun)));
  };
  look();
})"""


def six_days() -> Any:
    """Six days of eight exercises, taken evenly from the catalogue."""
    from setwright.exercises import catalogue
    from setwright.plan.week import Entry, Plan, Session

    ids = catalogue.ids()
    picked = [ids[number * len(ids) // 48] for number in range(48)]
    sessions = tuple(
        Session(
            name=f"Day {number + 1}",
            day=day,
            minutes=75,
            exercises=tuple(
                Entry(exercise=one, sets=3, reps=(8, 12), rir=(3, 1), rest_s=(120, 180))
                for one in picked[number::6]
            ),
        )
        for number, day in enumerate(DAYS)
    )
    return Plan(setwright="plan/1", title="Six days", sessions=sessions)


def filled(text: str) -> tuple[Any, Any]:
    """A practice with a coach and the week on the board."""
    from setwright.web.models import (
        Account,
        Client,
        IntakeVersion,
        Organisation,
        PlanVersion,
        Week,
    )

    practice = Organisation.objects.create(name="Tidewater Hall")
    coach = Account.objects.create(organisation=practice, role="coach", name="Bram")
    client = Client.objects.create(organisation=practice, coach=coach, name="Oda")
    IntakeVersion.objects.create(client=client, number=1, text=INTAKE, made_by=coach)
    week = Week.objects.create(client=client, starts=MONDAY)
    week.current = PlanVersion.objects.create(week=week, number=1, text=text, what="first")
    week.save()
    return coach, week


def on_the_server(coach: Any, week: Any, plan: Any) -> tuple[list[float], list[float], int]:
    """Milliseconds of each edit by the clock and of the processor, and bytes of the page.

    Another exercise each time; the processor's time tells what a busy machine hides.
    """
    from django.test import Client
    from django.urls import reverse

    browser = Client(SERVER_NAME="localhost")
    browser.force_login(coach)
    edit = reverse("board-edit", args=(week.client_id, week.starts))
    places = [
        (f"{s}.{e}", entry.exercise)
        for s, session in enumerate(plan.sessions)
        for e, entry in enumerate(session.exercises)
    ]
    spent, busy = [], []
    for number in range(TIMES):
        at, exercise = places[number * 7 % len(places)]
        by = 1 if number < len(places) else -1
        asked = {"base": number + 1, "do": "sets", "by": by, "at": at, "exercise": exercise}
        begun, used = time.perf_counter(), time.process_time()
        answer = browser.post(edit, asked, headers={"HX-Request": "true", "HX-Target": "board"})
        spent.append(1000 * (time.perf_counter() - begun))
        busy.append(1000 * (time.process_time() - used))
        if answer.status_code != 200:
            raise RuntimeError(answer.content.decode()[:500])
    page = browser.get(reverse("board", args=(week.client_id, week.starts)) + "?at=0.0")
    return spent[5:], busy[5:], len(gzip.compress(page.content, 6))


def in_a_browser(coach: Any, week: Any) -> list[float]:
    """Milliseconds from a key to the painted answer, over a real server; nothing without one."""
    from django.conf import settings
    from django.test import Client
    from django.urls import reverse
    from playwright.sync_api import sync_playwright
    from waitress import create_server

    from setwright.web.wsgi import application

    names = ("chromium", "chromium-browser", "google-chrome")
    found = os.environ.get("CHROMIUM") or next(filter(None, map(shutil.which, names)), None)
    if found is None:
        return []
    signed_in = Client(SERVER_NAME="localhost")
    signed_in.force_login(coach)
    cookie = signed_in.cookies[settings.SESSION_COOKIE_NAME].value
    server = create_server(application, host="127.0.0.1", port=0, threads=8)
    threading.Thread(target=server.run, daemon=True).start()
    url = f"http://127.0.0.1:{server.effective_port}"
    with sync_playwright() as driver:
        flags = ["--no-sandbox", "--disable-gpu"]
        browser = driver.chromium.launch(executable_path=found, args=flags)
        page = browser.new_context(viewport={"width": 1440, "height": 900}).new_page()
        page.context.add_cookies(
            [{"name": settings.SESSION_COOKIE_NAME, "value": cookie, "url": url}]
        )
        page.goto(url + reverse("board", args=(week.client_id, week.starts)))
        page.wait_for_function("window.htmx")
        spent = [page.evaluate(PRESS, "+-"[n % 2]) for n in range(IN_BROWSER)]
        browser.close()
    server.close()
    return spent[3:]


def from_scratch_ms(text: str, folder: Path) -> float:
    """Median milliseconds of the same audit by the command line, which keeps nothing."""
    (folder / "plan.yaml").write_text(text, "utf-8")
    (folder / "intake.yaml").write_text(INTAKE, "utf-8")
    command = [sys.executable, "-m", "setwright", "audit", str(folder / "plan.yaml")]
    command += ["--intake", str(folder / "intake.yaml")]
    spent = []
    for _ in range(7):
        begun = time.perf_counter()
        done = subprocess.run(command, capture_output=True, check=False)
        spent.append(1000 * (time.perf_counter() - begun))
        if done.returncode not in (0, 1):
            raise RuntimeError(done.stderr.decode())
    return statistics.median(spent)


def main() -> None:
    """Print the figures."""
    from setwright.plan.write import write_plan
    from setwright.web.server.prepare import migrate, set_up

    with tempfile.TemporaryDirectory() as name:
        set_up(Path(name))
        migrate()
        os.environ["DJANGO_ALLOW_ASYNC_UNSAFE"] = "true"
        plan = six_days()
        text = write_plan(plan)
        coach, week = filled(text)
        spent, busy, page = on_the_server(coach, week, plan)
        median = statistics.median(spent)
        scratch = from_scratch_ms(text, Path(name))
        print(f"edit on the server: median {median:.1f} ms (target 50), highest {max(spent):.1f}")
        print(f"of that the processor's time: median {statistics.median(busy):.1f} ms")
        print(
            f"the same audit from scratch, as a command: {scratch:.0f} ms, {scratch / median:.0f} x"
        )
        print(f"the board compressed: {page / 1000:.1f} kB (target 100)")
        whole = in_a_browser(coach, week)
        if whole:
            print(
                f"from the key to the painted answer: median {statistics.median(whole):.0f} ms "
                f"(target 150), highest {max(whole):.0f}"
            )
        else:
            print("no chromium on the path: the browser's part is not measured")


if __name__ == "__main__":
    main()
