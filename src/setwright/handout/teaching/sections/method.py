"""How the figures are made, and how far to trust them."""

from __future__ import annotations

from setwright.handout.teaching.content import Points, Section, Table, Words
from setwright.handout.teaching.evidence import known
from setwright.handout.wording import number
from setwright.response.factors import COEFFICIENTS

TERMS = (
    (
        "Fractional sets: a working set counts for a part by its share, from 0 to 1, of what the "
        "exercise asks of it. A head of a muscle counts as a part of its own.",
        ("weekly-volume-frequency-meta-regression-2024",),
    ),
    (
        "Effective sets: fractional sets after effort, repetitions, rest, load at long length and "
        "diminishing returns within a session.",
        ("session-volume-puos-2025",),
    ),
    (
        "Growth: percent of a muscle's size a week, for the middle person. Two people on one plan "
        "may differ by more than two plans in one person, so a difference between plans is surer "
        "than either figure alone.",
        (),
    ),
    (
        "80 % interval: eight in ten of the people or cases imagined fall inside it. What is not "
        "known of each coefficient, of each share and of the person is drawn anew for each.",
        (),
    ),
    (
        "RIR: repetitions in reserve, those that could still have been done. Lifters underrate "
        "them by about one.",
        ("rir-accuracy-meta-2022",),
    ),
)


def method_section() -> Section:
    """The words used, and every coefficient of the response with its uncertainty."""
    terms = Points(tuple(Words(words, sources) for words, sources in TERMS), "Words used here")
    thin = sum(not known(one.sources) for one in COEFFICIENTS.values())
    intro = Words(
        f"The response rests on {len(COEFFICIENTS)} coefficients. {thin} of them stand on practice "
        "or memory alone. Where a study gave no figure the value was chosen so that it agrees with "
        "what was found, and its spread says how little is known.",
        known(ident for one in COEFFICIENTS.values() for ident in one.sources),
    )
    table = Table(
        "Coefficients of the response: value, standard deviation of what is not known, and origin",
        ("what it does", "value", "spread", "how it was set"),
        tuple(
            (
                one.meaning,
                f"{number(one.value)} {'' if one.unit == '1' else one.unit}".strip(),
                number(one.sd),
                one.fitted,
            )
            for one in COEFFICIENTS.values()
        ),
        figures=(2,),
        wide=(0, 3),
    )
    return Section(
        "method", "How the figures are made, and how far to trust them", (terms, intro, table)
    )
