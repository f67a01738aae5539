"""The sessions of a week as iCalendar events (RFC 5545)."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, date, datetime, time, timedelta
from typing import TYPE_CHECKING
from uuid import NAMESPACE_URL, uuid5
from zoneinfo import ZoneInfo

from setwright.handout.content.model import Content, Line, SessionContent
from setwright.handout.writable_text import writable
from setwright.plan.intake import DAYS

if TYPE_CHECKING:
    from icalendar import Event

MAKER = "-//Setwright//Handout//EN"


def calendar(
    content: Content, start: date, at: time, zone: ZoneInfo | None, moment: datetime, weeks: int = 1
) -> bytes:
    """One event a session, in the week that holds ``start`` or the days that follow it.

    The id of an event hangs on the person, the start, the day of the week and, when a day has more
    than one session, which of them it is: a plan that is changed and imported again updates its
    events instead of doubling them.

    Args:
        content: what the handout says.
        start: first day on which a session may fall.
        at: when the first session of a day begins; a second one begins when the first ends.
        zone: time zone of ``at``; None leaves it to the reader's device (floating time).
        moment: when the calendar was made; the same moment gives the same bytes.
        weeks: how often the week is repeated.
    """
    from icalendar import Calendar, vText

    made = Calendar()
    made.add("prodid", MAKER)
    made.add("version", "2.0")
    made.add("calscale", "GREGORIAN")
    made.add("x-wr-calname", vText(" ".join(writable(content.title).split())))
    ends: dict[str, datetime] = {}
    held: dict[str, int] = {}
    for session in content.sessions:
        first = datetime.combine(day_of(session, start), at, tzinfo=zone)
        begins = max(first, ends.get(session.day, first))
        place = held[session.day] = held.get(session.day, 0) + 1
        ends[session.day] = begins + timedelta(minutes=session.minutes)
        made.add_component(
            _event(content, session, begins, _uid(content, start, session, place), moment, weeks)
        )
    if zone is not None:
        made.add_missing_timezones(first_date=start, last_date=start + timedelta(weeks=weeks + 1))
    return bytes(made.to_ical())


def day_of(session: SessionContent, start: date) -> date:
    """The first date on or after ``start`` that falls on the day of a session."""
    return start + timedelta(days=(DAYS.index(session.day) - start.weekday()) % 7)


def _uid(content: Content, start: date, session: SessionContent, place: int) -> str:
    whose = content.person or content.title
    return f"{uuid5(NAMESPACE_URL, f'setwright:{whose}:{start}:{session.day}:{place}')}@setwright"


def _event(
    content: Content,
    session: SessionContent,
    begins: datetime,
    uid: str,
    moment: datetime,
    weeks: int,
) -> Event:
    from icalendar import Event

    event = Event()
    event.add("uid", uid)
    event.add("dtstamp", moment.astimezone(UTC).replace(microsecond=0))
    # A later export of the same session has a higher number, so that importers take it.
    event.add("sequence", max(int(moment.timestamp()) // 60 - SEQUENCE_FROM, 0))
    event.add("dtstart", begins)
    event.add("duration", timedelta(minutes=session.minutes))
    if weeks > 1:
        event.add("rrule", {"freq": "weekly", "count": weeks})
    event.add("summary", writable(f"Training: {session.name}"))
    event.add("description", writable(description(content, session)))
    event.add("transp", "OPAQUE")
    return event


# Minutes from the epoch to 2020: sequence numbers stay well inside 32 bits.
SEQUENCE_FROM = 26_297_280


def description(content: Content, session: SessionContent) -> str:
    """The text of an event: the session, then the cautions the person's answers ask for."""
    lines = [f"{session.minutes} min (80 % interval {session.interval})", ""]
    for group in session.groups:
        if len(group.lines) > 1:
            lines.append(f"Superset {group.letter}, one set of each in turn:")
        lines += [_said(line) for line in group.lines]
    return "\n".join([*lines, "", *_care(content.own_cautions), *content.ask[-1:]])


def _said(line: Line) -> str:
    tempo = f", tempo {line.tempo}" if line.tempo else ""
    ramp = f"; warm up {', '.join(line.ramp)}" if line.ramp else ""
    note = f" ({line.note})" if line.note else ""
    return (
        f"{line.mark} {line.name}: {line.dose}, {line.load}, RIR {line.rir}, "
        f"rest {line.rest}{tempo}{ramp}{note}"
    )


def _care(cautions: Sequence[str]) -> list[str]:
    return ["Take care:", *(f"- {one}" for one in cautions), ""] if cautions else []
