"""A workspace in one file and back, to the same kind of database as the tests run on."""

import gzip
import json

import pytest
from django.db import transaction

from setwright.documents.errors import DocumentError
from setwright.web.models import Account, Attempt, Client, LogEntry, PlanVersion, TrailEntry, Week
from setwright.web.server.backup import backup, models, read_backup
from setwright.web.server.restore import restore

PLAN = "setwright: plan/1\n"

pytestmark = pytest.mark.django_db(transaction=True)


@pytest.fixture
def filled(person):
    week = Week.objects.create(client=person, starts="2026-09-07")
    first = PlanVersion.objects.create(week=week, number=1, text=PLAN, what="designed")
    second = PlanVersion.objects.create(week=week, number=2, text=PLAN, what="é", parent=first)
    week.current, week.sent, week.undone = second, first, [second.pk]
    week.save()
    LogEntry.objects.create(client=person, record_id="a", at="2026-09-07T18:00:00", text="{}")
    Attempt.objects.create(key="sign-in x")
    return person


def everything():
    return {one._meta.label: list(one._default_manager.order_by("pk").values()) for one in models()}


def kept(path):
    return read_backup(path.read_bytes(), path.name)


def test_what_comes_back_is_what_was_there_to_the_microsecond(filled, tmp_path):
    file = tmp_path / "a.backup"
    before = everything()
    backup(file)
    LogEntry.objects.all().delete()
    Client.objects.update(name="someone else")
    restore(kept(file), over=True)
    assert everything() == before


def test_what_is_made_after_a_restore_gets_new_numbers(filled, tmp_path):
    file = tmp_path / "a.backup"
    backup(file)
    restore(kept(file), over=True)
    LogEntry.objects.create(client=filled, record_id="b", at="2026-09-07T18:00:00", text="{}")
    assert LogEntry.objects.count() == 2


def test_a_workspace_in_use_is_replaced_only_when_said(filled, tmp_path):
    file = tmp_path / "a.backup"
    backup(file)
    with pytest.raises(DocumentError, match="--yes"):
        restore(kept(file), over=False)


def test_an_empty_one_is_filled(filled, tmp_path):
    file = tmp_path / "a.backup"
    before = everything()
    backup(file)
    with transaction.atomic():
        for model in models():
            model._default_manager.all()._raw_delete("default")
    restore(kept(file), over=False)
    assert everything() == before


def test_only_the_owner_of_the_file_reads_it(filled, tmp_path):
    file = tmp_path / "a.backup"
    backup(file)
    assert file.stat().st_mode & 0o077 == 0


@pytest.mark.parametrize("cut", [0, 1, 30, 500, -1, -9])
def test_a_file_cut_short_is_refused(filled, tmp_path, cut):
    file = tmp_path / "a.backup"
    backup(file)
    with pytest.raises(DocumentError):
        read_backup(file.read_bytes()[:cut], "a")


def changed(file, change):
    lines = gzip.decompress(file.read_bytes()).splitlines()
    return gzip.compress(b"\n".join(change(lines)) + b"\n")


@pytest.mark.parametrize(
    "change",
    [
        lambda lines: [lines[0], *lines[2:]],
        lambda lines: [*lines[:1], lines[1].replace(b"Tidewater", b"Somewhere"), *lines[2:]],
        lambda lines: lines[1:],
        lambda lines: [b'{"setwright": "backup/9"}', *lines[1:]],
    ],
)
def test_a_file_that_was_changed_is_refused(filled, tmp_path, change):
    file = tmp_path / "a.backup"
    backup(file)
    with pytest.raises(DocumentError):
        read_backup(changed(file, change), "a")


def test_a_backup_of_a_later_version_is_refused(filled, tmp_path):
    file = tmp_path / "a.backup"
    backup(file)

    def later(lines):
        head = json.loads(lines[0])
        head["migrations"].append(["workspace", "9999_later"])
        return [json.dumps(head).encode(), *lines[1:]]

    with pytest.raises(DocumentError, match="9999_later"):
        restore(read_backup(changed(file, later), "a"), over=True)


def test_rows_that_do_not_go_together_change_nothing(filled, tmp_path):
    from setwright.web.server.backup import Kept

    file = tmp_path / "a.backup"
    backup(file)
    whole = kept(file)
    before = everything()
    rows = tuple(row for row in whole.rows if b'"workspace.account"' not in row)
    with pytest.raises(DocumentError, match="restore"):
        restore(Kept(whole.made_at, whole.version, whole.migrations, rows), over=True)
    assert everything() == before
    assert Account.objects.exists()
    assert TrailEntry.objects.count() == 0
