"""Erased is erased from the file, too."""

SCRIPT = """
import os, sys
from pathlib import Path
from setwright.web.server.prepare import set_up, migrate
folder = Path(os.environ["SETWRIGHT_DATA"])
set_up(folder); migrate()
from django.test import Client as Browser, override_settings
from setwright.web.demo.fill import fill
from setwright.web.models import Client, Account
from setwright.web.sharing.erasing import erase
from datetime import date
fill(date(2026, 11, 26))
tove = Client.objects.get(name="Tove")
tove.notes = "Zanzibar seven"; tove.name = "Tovelinde"; tove.save()
browser = Browser(); browser.force_login(tove.account)
words = [b"Zanzibar seven", b"Tovelinde", b"shoulder complains overhead"]
def found():
    whole = b"".join(p.read_bytes() for p in folder.iterdir() if p.is_file())
    return [word.decode() for word in words if word in whole]
print("before:", found())
Client.objects.filter(name="Leila").delete()  # whose intake says nearly the same
print("clean:", erase(tove, Account.objects.get(role="owner")))
print("after:", found())
"""


def test_no_word_of_the_person_is_left_in_any_file_of_the_workspace(embedded):
    done = embedded("-c", SCRIPT)
    before, clean, after = done.stdout.splitlines()[-3:]
    assert before == "before: ['Zanzibar seven', 'Tovelinde', 'shoulder complains overhead']"
    assert clean == "clean: True"
    assert after == "after: []", done.stderr
