"""What was done before, exercise by exercise: the facts that the next load stands on."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace

from setwright.training.done import DoneSet

# Outings kept of each exercise: enough for the load before a break and its transition.
KEPT = 24


@dataclass(frozen=True, slots=True)
class Outing:
    """One exercise on one day.

    Attributes:
        day: proleptic ordinal of the date.
        sets: working sets in order.
        pain: highest level of pain in it, 0 to 10.
        technique: technique broke down in it.
        stopped: a symptom that stops training was reported in it.
    """

    day: int
    sets: tuple[DoneSet, ...]
    pain: int = 0
    technique: bool = False
    stopped: bool = False

    @property
    def load_kg(self) -> float:
        """Load of the first working set, as lifted."""
        return self.sets[0].load_kg


@dataclass
class Past:
    """Outings by exercise, in time order; changed in place by ``add``.

    Attributes:
        outings: of each exercise, at most the last ``KEPT``.
        days: days on which anything was trained, rising.
        ill_until: last day on which illness was reported, or None.
    """

    outings: dict[str, list[Outing]] = field(default_factory=dict)
    days: list[int] = field(default_factory=list)
    ill_until: int | None = None

    def add(
        self, done: DoneSet, pain: int = 0, technique: bool = False, stopped: bool = False
    ) -> None:
        """One more set, not earlier than those before it."""
        if not self.days or done.day > self.days[-1]:
            self.days.append(done.day)
        known = self.outings.setdefault(done.exercise, [])
        if known and known[-1].day == done.day:
            last = known[-1]
            known[-1] = replace(
                last,
                sets=(*last.sets, done),
                pain=max(last.pain, pain),
                technique=last.technique or technique,
                stopped=last.stopped or stopped,
            )
            return
        known.append(Outing(done.day, (done,), pain, technique, stopped))
        if len(known) > KEPT:
            del known[0]

    def of(self, exercise: str) -> tuple[Outing, ...]:
        """Outings of an exercise, in time order."""
        return tuple(self.outings.get(exercise, ()))

    def last_day(self) -> int | None:
        """The last day on which anything was trained."""
        return self.days[-1] if self.days else None


def past_of(done: Iterable[DoneSet]) -> Past:
    """The past out of sets without flags, in time order."""
    past = Past()
    for one in done:
        past.add(one)
    return past
