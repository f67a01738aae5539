"""A backup of the database the tests run on, into an embedded one and back."""

import gzip

import pytest

from setwright.web.demo.fill import fill
from setwright.web.models import LogEntry
from setwright.web.server.backup import backup, read_backup
from setwright.web.server.restore import restore


def rows(file):
    return sorted(gzip.decompress(file.read_bytes()).splitlines()[1:-1])


@pytest.mark.django_db(transaction=True)
def test_there_and_back_is_the_same_to_the_last_row(embedded, tmp_path):
    from datetime import date

    fill(date(2026, 11, 26))
    here, there = tmp_path / "here.backup", tmp_path / "there.backup"
    backup(here)
    done = embedded("-m", "setwright", "restore", here)
    assert done.returncode == 0, done.stderr
    assert embedded("-m", "setwright", "restore", here).returncode == 2
    assert embedded("-m", "setwright", "restore", here, "--yes").returncode == 0
    done = embedded("-m", "setwright", "backup", there)
    assert done.returncode == 0, done.stderr
    assert rows(there) == rows(here)
    LogEntry.objects.all().delete()
    restore(read_backup(there.read_bytes(), "there"), over=True)
    again = tmp_path / "again.backup"
    backup(again)
    assert rows(again) == rows(here)


def test_there_is_nothing_to_back_up_without_a_workspace(embedded, tmp_path):
    done = embedded("-m", "setwright", "backup", "x.backup", "--data", "nowhere")
    assert done.returncode == 2
    assert "no workspace" in done.stderr
    assert not (tmp_path / "x.backup").exists()
