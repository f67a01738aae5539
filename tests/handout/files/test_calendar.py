from __future__ import annotations

import dataclasses
import itertools
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import vobject
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.handout.calendar import calendar, day_of
from setwright.handout.content.model import Content

LISBON = ZoneInfo("Europe/Lisbon")
MOMENT = datetime(2026, 3, 1, 9, 30, tzinfo=UTC)
START = date(2026, 3, 25)


def made(content: Content, **wishes: object) -> bytes:
    asked = {"start": START, "at": time(18), "zone": LISBON, "moment": MOMENT, **wishes}
    return calendar(content, **asked)  # type: ignore[arg-type]


def events(raw: bytes) -> list[vobject.base.Component]:
    """Events as a parser that did not write them reads them."""
    found: list[vobject.base.Component] = vobject.readOne(raw.decode("utf-8")).vevent_list
    return found


def test_every_session_is_an_event_at_its_hour(hard_content: Content) -> None:
    found = events(made(hard_content))
    assert len(found) == 6
    for event, session in zip(found, hard_content.sessions, strict=True):
        begins = event.dtstart.value
        assert begins.date() == day_of(session, START)
        assert begins.date().strftime("%A").lower() == session.day
        assert (begins.hour, begins.minute) == (18, 0)
        assert event.duration.value == timedelta(minutes=session.minutes)
        assert event.summary.value == f"Training: {session.name}"
        for line in session.lines:
            assert f"{line.name}: {line.dose}" in event.description.value
            assert line.note in event.description.value


def test_summer_time_begins_within_the_week(client_content: Content) -> None:
    monday = next(one for one in events(made(client_content)) if one.dtstart.value.weekday() == 0)
    thursday = next(one for one in events(made(client_content)) if one.dtstart.value.weekday() == 3)
    assert thursday.dtstart.value.utcoffset() == timedelta(0)  # 26 March
    assert monday.dtstart.value.utcoffset() == timedelta(hours=1)  # 30 March


def test_without_a_zone_times_float(client_content: Content) -> None:
    raw = made(client_content, zone=None)
    assert b"VTIMEZONE" not in raw and b"TZID" not in raw
    assert all(one.dtstart.value.tzinfo is None for one in events(raw))


def test_a_changed_plan_updates_its_events(client_content: Content) -> None:
    first = client_content.sessions[0]
    changed = dataclasses.replace(
        client_content,
        title="Another title",
        sessions=(
            dataclasses.replace(first, name="Another name", minutes=first.minutes + 5),
            *client_content.sessions[1:],
        ),
    )
    before = events(made(client_content))
    after = events(made(changed, moment=MOMENT + timedelta(minutes=1)))
    assert [one.uid.value for one in before] == [one.uid.value for one in after]
    assert len({one.uid.value for one in before}) == len(before)
    for old, new in zip(before, after, strict=True):
        assert int(new.sequence.value) > int(old.sequence.value)
        assert new.dtstamp.value > old.dtstamp.value


def test_another_person_or_week_has_other_events(client_content: Content) -> None:
    own = {one.uid.value for one in events(made(client_content))}
    other = dataclasses.replace(client_content, person="Somebody else")
    assert own.isdisjoint(one.uid.value for one in events(made(other)))
    later = made(client_content, start=START + timedelta(weeks=1))
    assert own.isdisjoint(one.uid.value for one in events(later))


def test_the_same_moment_gives_the_same_bytes(client_content: Content) -> None:
    assert made(client_content) == made(client_content)


def test_weeks_repeat(client_content: Content) -> None:
    for event in events(made(client_content, weeks=3)):
        assert len(list(event.getrruleset(addRDate=True))) == 3


def test_a_repeated_session_stays_at_its_hour_when_summer_time_begins(
    client_content: Content,
) -> None:
    for event in events(made(client_content, weeks=3)):
        found = list(event.getrruleset(addRDate=True))
        assert {(one.hour, one.minute) for one in found} == {(18, 0)}
        assert all((after - before).days == 7 for before, after in itertools.pairwise(found))
        assert {one.replace(tzinfo=LISBON).utcoffset() for one in found} >= {timedelta(hours=1)}


def test_a_second_import_leaves_one_event_a_session(client_content: Content) -> None:
    """As RFC 5545 asks: the same UID is the same event, and the higher SEQUENCE is taken."""
    held: dict[str, vobject.base.Component] = {}
    first = client_content.sessions[0]
    longer = dataclasses.replace(first, minutes=first.minutes + 20)
    changed = dataclasses.replace(client_content, sessions=(longer, *client_content.sessions[1:]))
    later = MOMENT + timedelta(days=2)
    for raw in (
        made(client_content),
        made(changed, moment=later, at=time(7, 30)),
        made(client_content),
    ):
        for event in events(raw):
            old = held.get(event.uid.value)
            if old is None or int(event.sequence.value) > int(old.sequence.value):
                held[event.uid.value] = event
    assert len(held) == len(client_content.sessions)
    assert {one.dtstart.value.time() for one in held.values()} == {time(7, 30)}
    assert timedelta(minutes=longer.minutes) in [one.duration.value for one in held.values()]


def test_two_sessions_of_a_day_follow_each_other(client_content: Content) -> None:
    first = client_content.sessions[0]
    twice = dataclasses.replace(client_content, sessions=(first, first))
    one, two = events(made(twice))
    assert two.dtstart.value == one.dtstart.value + one.duration.value
    assert one.uid.value != two.uid.value


def test_lines_are_folded_at_75_bytes(hard_content: Content) -> None:
    assert all(len(line) <= 75 for line in made(hard_content).split(b"\r\n"))


@settings(derandomize=True, max_examples=60, deadline=None)
@given(note=st.text(st.characters(blacklist_categories=["Cs", "Cc", "Zl", "Zp"]), max_size=80))
def test_any_note_comes_back_as_it_was_written(client_content: Content, note: str) -> None:
    session = client_content.sessions[0]
    line = dataclasses.replace(session.groups[0].lines[0], note=f"x{note}x")
    group = dataclasses.replace(session.groups[0], lines=(line,))
    noted = dataclasses.replace(session, groups=(group,))
    (event,) = events(made(dataclasses.replace(client_content, sessions=(noted,))))
    assert f"(x{note}x)" in event.description.value


@settings(derandomize=True, max_examples=60, deadline=None)
@given(words=st.text(max_size=40))
def test_no_words_add_a_line_of_their_own(client_content: Content, words: str) -> None:
    trick = f"{words}\r\nEND:VEVENT\r\nBEGIN:VEVENT\r\nUID:x{words}"
    first = dataclasses.replace(client_content.sessions[0], name=trick)
    said = dataclasses.replace(client_content, title=trick, person=trick, sessions=(first,))
    raw = made(said)
    assert len(events(raw)) == raw.count(b"\nBEGIN:VEVENT") == 1
    assert not [one for one in raw.decode("utf-8") if ord(one) < 32 and one not in "\r\n\t"]
