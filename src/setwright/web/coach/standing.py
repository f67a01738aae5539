"""What of a client needs the coach, most urgent first, in words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Literal

from setwright.handout.review_words import exercise_name
from setwright.handout.wording import counted, listed
from setwright.plan.client_folder import ClientFolder
from setwright.plan.intake import DAYS, Intake
from setwright.plan.limits import clearance
from setwright.training.facts.attendance import SessionDone
from setwright.training.facts.week import Facts
from setwright.training.pain import Answer, PainCourse
from setwright.training.proposals.exchange import RANK_PAIN
from setwright.training.review import Review, week_to_review
from setwright.web.coach.content import Content
from setwright.web.coach.reviewed import review_of, trained_on

Page = Literal["review", "intake", "board", "client"]
Group = Literal["now", "decide", "set up", "none"]
MOST_NAMED = 3
_PAIN_RANK: dict[Answer, int] = {
    "stop and exchange": 10,
    "lighter, other range": 15,
    "carry on, watching": 30,
}
STOP_RANK = 0
_NOW_BELOW = 25


@dataclass(frozen=True)
class Need:
    """One reason to turn to a client.

    Attributes:
        rank: urgency, the most urgent lowest.
        group: heading it stands under.
        words: why, one sentence.
        page: where it is dealt with.
        week: Monday that the page opens on, where it opens on one.
    """

    rank: int
    group: Group
    words: str
    page: Page
    week: date | None = None


@dataclass(frozen=True)
class Around:
    """What of a client is no document.

    Attributes:
        joined: the client has signed in on a phone.
        invited: an invitation is open.
        looked: last day on which the coach looked at the review of the week in question.
    """

    joined: bool = False
    invited: bool = False
    looked: date | None = None


def needs(
    folder: ClientFolder | None, content: Content, around: Around, today: date
) -> tuple[Need, ...]:
    """Everything that needs the coach, most urgent first; nothing when all is well.

    Args:
        folder: as the engine knows the client; None before an intake.
        content: what the folder was read from.
        around: what is no document.
        today: the day to stand on.
    """
    found: list[Need] = []
    if folder is None:
        found.append(Need(80, "set up", "No intake yet.", "intake"))
    else:
        found += _screening(folder.intake)
        found += _weeks(folder, content, around.looked, today)
    if folder is not None and not around.joined:
        words = "Invited, not joined yet." if around.invited else "Not invited to the phone yet."
        found.append(Need(95 if around.invited else 90, "set up", words, "client"))
    return tuple(sorted(found, key=lambda one: one.rank))


def reviewed_week(folder: ClientFolder, today: date) -> date | None:
    """Monday of the week that is due for a review; None while nothing was in force then."""
    monday = week_to_review(folder, today)
    return None if folder.plan_on(monday) is None else monday


def _screening(intake: Intake) -> Iterator[Need]:
    wanted = clearance(intake)
    if wanted is not None:
        words = (
            f"The screening ({wanted.because}) asks for a clearance note of a licensed "
            "professional before training."
        )
        yield Need(20, "now", words, "intake")


def _weeks(
    folder: ClientFolder, content: Content, looked: date | None, today: date
) -> Iterator[Need]:
    this = today - timedelta(today.weekday())
    drafts = [week.starts for week in content.weeks if week.sent is None and week.current]
    if not folder.plans:
        words = "The first week is a draft, not sent yet." if drafts else "No plan yet."
        yield Need(70, "set up", words, "board", drafts[0] if drafts else this)
        return
    now = Facts(trained_on(folder, content, today), this, folder.plan_on(this))
    yield from complaints(now, looked)
    due = reviewed_week(folder, today)
    if due is None:
        yield from _missed(now.sessions, today, None)
        return
    found = review_of(folder, content, due, today)
    unread = looked is None or looked < _readable(folder, due)
    earlier = found.facts.sessions if unread and due != this else ()
    yield from _missed((*earlier, *now.sessions), today, looked)
    yield from _proposals(found, unread)
    if unread and found.facts.stalls:
        names = _names(one.exercise for one in found.facts.stalls)
        yield Need(50, "decide", f"No gain for about six weeks: {names}.", "review", due)
    following = due + timedelta(7)
    week = next((one for one in content.weeks if one.starts == following), None)
    if week is None or week.sent is None:
        which = "This week" if following == this else "Next week"
        words = f"{which} is not sent yet; the plan of before goes on."
        yield Need(60, "decide", words, "review", due)
    elif week.current != week.sent:
        words = f"The week of {day_words(following)} was changed since it was sent."
        yield Need(65, "decide", words, "board", following)


def complaints(now: Facts, looked: date | None) -> Iterator[Need]:
    """Stop signs while they stand, and pain the coach has not looked at since.

    Args:
        now: the week under way.
        looked: last day on which the coach looked; pain of that day counts as not seen.
    """
    if now.symptoms:
        words = f"Stop sign reported: {listed(list(now.symptoms))}. A licensed professional first."
        yield Need(STOP_RANK, "now", words, "review", now.monday)
    fresh = [one for one in now.pain if looked is None or one.days[-1] >= looked.toordinal()]
    for answer, rank in _PAIN_RANK.items():
        rows = [one for one in fresh if one.answer == answer]
        if rows:
            words = f"Pain reported: {'; '.join(_pain_words(one) for one in rows[:MOST_NAMED])}"
            more = f"; {len(rows) - MOST_NAMED} more" if len(rows) > MOST_NAMED else ""
            group: Group = "now" if rank < _NOW_BELOW else "decide"
            yield Need(rank, group, f"{words}{more}.", "review", now.monday)


def _pain_words(one: PainCourse) -> str:
    return f"{exercise_name(one.exercise)} ({one.where} {one.levels[-1]} of 10)"


def _missed(sessions: Iterable[SessionDone], today: date, looked: date | None) -> Iterator[Need]:
    rows = [
        one
        for one in sessions
        if one.done_on is None
        and one.planned_on < today
        and (looked is None or one.planned_on >= looked)
    ]
    if rows:
        days = listed([f"{one.planned_on:%a} {day_words(one.planned_on)}" for one in rows])
        reasons = list(dict.fromkeys(one.reason for one in rows if one.reason))
        why = f" ({', '.join(reasons)})" if reasons else ""
        words = f"{counted(len(rows), 'session')} missed: {days}{why}."
        last = rows[-1].planned_on
        yield Need(40, "decide", words, "review", last - timedelta(last.weekday()))


def _proposals(found: Review, unread: bool) -> Iterator[Need]:
    waiting = [one for one in found.proposals if one.id not in found.decided]
    week = f"the {'unread ' if unread else ''}week of {day_words(found.facts.monday)}"
    if waiting:
        wait = "waits" if len(waiting) == 1 else "wait"
        words = f"{counted(len(waiting), 'proposal')} {wait} in {week}: {waiting[0].title}"
        more = len(waiting) - 1
        words += f", and {more} more." if more else "."
        # What hurts stays at the top until it is decided, looked at or not.
        hurts = waiting[0].rank <= RANK_PAIN
        group: Group = "now" if hurts else "decide"
        yield Need(12 if hurts else 35, group, words, "review", found.facts.monday)
    elif unread:
        words = f"The week of {day_words(found.facts.monday)} is unread."
        yield Need(55, "decide", words, "review", found.facts.monday)


def _readable(folder: ClientFolder, monday: date) -> date:
    """First day on which a week's last session lies behind."""
    plan = folder.plan_on(monday)
    last = 6 if plan is None else max(DAYS.index(one.day) for one in plan.sessions)
    return monday + timedelta(last)


def _names(exercises: Iterable[str]) -> str:
    names = [exercise_name(one) for one in exercises]
    more = len(names) - MOST_NAMED
    return ", ".join(names[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")


def day_words(day: date) -> str:
    """A day as coaches say it: `16 November`."""
    return f"{day.day} {day:%B}"
