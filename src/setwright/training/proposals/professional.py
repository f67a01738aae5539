"""Ask a licensed professional: after a symptom that stops training, or pain that lasts."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.exercises import catalogue
from setwright.training.facts.week import Facts
from setwright.training.proposals.model import Expected, Proposal, proposal_id
from setwright.training.stop_signs import referral
from setwright.training.trouble import OF_ONE_EXERCISE, PASSING

KIND = "ask a professional"
RANK = 0
# Weight of a proposal beside which no other stands.
STOPS_ALL = 100.0


def propose(facts: Facts) -> Iterator[Proposal]:
    """One for all symptoms together, one for each place where pain lasts."""
    if facts.symptoms:
        signs = referral(facts.symptoms)
        what = " and ".join(facts.symptoms)
        if all(one in PASSING for one in facts.symptoms):
            title, then = "No session on such a day", "Training goes on when the person is sober."
            weight = 1.0
        elif all(one in OF_ONE_EXERCISE or one in PASSING for one in facts.symptoms):
            title = "Stop the exercise and ask a licensed professional"
            then = (
                "The sessions to come leave it out until the intake holds a later day of clearance."
            )
            weight = 10.0
        else:
            title = "No further session until a licensed professional has cleared training"
            then = "No session is given until the intake holds a later day of clearance."
            weight = STOPS_ALL
        yield Proposal(
            proposal_id(KIND, what, facts.monday),
            KIND,
            what,
            title,
            {},
            (f"Reported: {what}.", *(one.words for one in signs)),
            Expected(),
            then,
            tuple(source for one in signs for source in one.sources),
            weight,
            RANK,
        )
    for course in facts.pain:
        if not course.lasting:
            continue
        name = course.exercise
        if name in catalogue.ids():
            name = catalogue.exercise(name).name
        yield Proposal(
            proposal_id(KIND, course.exercise, facts.monday),
            KIND,
            course.exercise,
            f"Ask a licensed professional about the pain at the {course.where}",
            {},
            (
                f"{name}: pain reported {len(course.days)} times over "
                f"{course.days[-1] - course.days[0] + 1} days, last {course.levels[-1]} of 10.",
            ),
            Expected(),
            "Loads do not rise there while pain is reported; nothing else changes.",
            ("pain-persist", "scope-no-diagnosis"),
            float(min(len(course.days) * max(course.levels), STOPS_ALL / 2)),
            RANK + 1,
        )
