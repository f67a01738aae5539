"""Everything kept of a person as one archive: a client's folder as the command line reads it.

Beside intake, sent plans, log and decisions it holds what the folder has no place for: drafts,
every version, earlier intakes, the coach's notes, links and invitations, and the audit trail.
"""

from __future__ import annotations

import csv
import io
import json
import zipfile
from collections.abc import Iterator
from datetime import datetime

from setwright.handout.names import safe_name
from setwright.plan.client_folder import DECISIONS, INTAKE, LOG, PLANS
from setwright.web.models import Client, ShareLink, TrailEntry
from setwright.web.trail import names_of

ABOUT, TRAIL = "about.json", "trail.csv"
DRAFTS, VERSIONS, INTAKES = "drafts", "versions", "intakes"


def folder_name(client: Client) -> str:
    """Of the folder inside an archive, and of the archive."""
    return safe_name(client.name)


def archive_of(client: Client, now: datetime) -> bytes:
    """The archive, a zip file with one folder in it.

    Args:
        client: whose.
        now: moment of the export.
    """
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, text in _files(client, now):
            entry = zipfile.ZipInfo(f"{folder_name(client)}/{name}", now.timetuple()[:6])
            entry.compress_type = zipfile.ZIP_DEFLATED
            entry.external_attr = 0o600 << 16
            archive.writestr(entry, text)
    return packed.getvalue()


def _files(client: Client, now: datetime) -> Iterator[tuple[str, str]]:
    intakes = list(client.intakes.values_list("number", "text"))
    if intakes:
        yield INTAKE, intakes[-1][1]
    for number, text in intakes[:-1]:
        yield f"{INTAKES}/{number:04}.yaml", text
    for week in client.weeks.select_related("sent", "current"):
        if week.sent is not None:
            yield f"{PLANS}/{week.starts}.yaml", week.sent.text
        if week.current is not None and week.current_id != week.sent_id:
            yield f"{DRAFTS}/{week.starts}.yaml", week.current.text
        for number, text in week.versions.values_list("number", "text"):
            yield f"{VERSIONS}/{week.starts}-{number:04}.yaml", text
    yield LOG, _lines(client.log.values_list("text", flat=True))
    yield DECISIONS, _lines(client.decisions.values_list("text", flat=True))
    yield TRAIL, trail_table(client)
    yield ABOUT, json.dumps(_about(client, now), indent=2, ensure_ascii=False) + "\n"


def _lines(texts: object) -> str:
    return "".join(f"{text}\n" for text in texts)  # type: ignore[attr-defined]


def _about(client: Client, now: datetime) -> dict[str, object]:
    links = ShareLink.objects.filter(version__week__client=client).select_related("version__week")
    return {
        "setwright": "archive/1",
        "made_at": now.isoformat(timespec="seconds"),
        "name": client.name,
        "coach": client.coach.name,
        "notes": client.notes,
        "since": client.made_at.isoformat(timespec="seconds"),
        "archived": client.archived_at is not None,
        "sent": {
            week.starts.isoformat(): week.sent_at.isoformat(timespec="seconds")
            for week in client.weeks.all()
            if week.sent_at is not None
        },
        "edits": [
            {
                "week": version.week.starts.isoformat(),
                "version": version.number,
                "what": version.what,
                "at": version.made_at.isoformat(timespec="seconds"),
            }
            for week in client.weeks.all()
            for version in week.versions.select_related("week")
        ],
        "links": [
            {
                "week": link.version.week.starts.isoformat(),
                "version": link.version.number,
                "until": link.expires_at.isoformat(timespec="seconds"),
                "ended": link.revoked_at is not None,
            }
            for link in links
        ],
        "invitations": client.invitations.count(),
    }


def trail_table(client: Client) -> str:
    """The audit trail of a client as CSV: when, who, what, detail."""
    entries = TrailEntry.objects.filter(client=str(client.uuid)).order_by("id")
    names = names_of(entries)
    out = io.StringIO()
    table = csv.writer(out, lineterminator="\n")
    table.writerow(("at", "who", "what", "detail"))
    for one in entries:
        who = names.get(one.who, one.who)
        table.writerow((one.at.isoformat(timespec="seconds"), _safe(who), one.what, one.detail))
    return out.getvalue()


def _safe(words: str) -> str:
    """A name that a spreadsheet does not take for a formula."""
    return f"'{words}" if words[:1] in "=+-@\t\r" else words
