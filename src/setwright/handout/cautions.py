"""Stop signs and who to ask: the end of every printed plan. Nothing here diagnoses or treats."""

from __future__ import annotations

from setwright.handout.wording import folded
from setwright.plan.intake import Intake
from setwright.plan.limits import clearance
from setwright.training.stop_signs import STOP_SIGNS, Caution

WIDTH = 96


ASK: tuple[Caution, ...] = (
    Caution(
        "Ask a licensed professional before training with a disease of heart, metabolism or "
        "kidneys, with symptoms, in pregnancy, after surgery, or on a new medicine.",
        ("screen-factors", "preg-clearance", "surgery-note", "med-change"),
    ),
    Caution(
        "Ask one, too, about pain that has not eased after two to four weeks of lighter work.",
        ("pain-persist",),
    ),
    Caution(
        "This plan does not diagnose or treat, and takes nobody's place who does.",
        ("scope-no-diagnosis",),
    ),
)


def cautions(intake: Intake | None = None) -> tuple[Caution, ...]:
    """The cautions of a plan: those of the person first, then the ones for everybody."""
    return (*(personal(intake) if intake else ()), *STOP_SIGNS, *ASK)


def personal(intake: Intake) -> tuple[Caution, ...]:
    """Cautions that a person's own answers ask for."""
    answers = intake.screening
    found = []
    needed = clearance(intake)
    if needed is not None:
        found.append(
            Caution(
                f"Before the first session a licensed professional should clear training: "
                f"{needed.because}.",
                needed.evidence,
            )
        )
    if answers.pregnant:
        found.append(
            Caution(
                "Stop and call the maternity provider at bleeding, loss of fluid, regular painful "
                "contractions, headache, or fewer movements of the baby.",
                ("preg-stop-signs",),
            )
        )
    if answers.high_blood_pressure:
        found.append(
            Caution(
                "Breathe out on the way up, hold no breath, and end each set short of failure.",
                ("bp-cap-failure", "breath-hold"),
            )
        )
    if answers.osteoporosis:
        found.append(
            Caution(
                "Leave out loaded bending of the spine; ask a licensed professional about lifting "
                "after any fracture.",
                ("osteo-flexion", "osteo-fracture"),
            )
        )
    if any(item.reason == "pain" for item in intake.avoid) or answers.back_pain:
        found.append(
            Caution(
                "Known pain up to 3 of 10 may be worked with, 4 to 5 only if it settles by the "
                "next morning; above that change the exercise.",
                ("pain-scale",),
            )
        )
    if intake.age_band == "under 18":
        found.append(Caution("A qualified adult supervises every session.", ("youth-supervised",)))
    if intake.setting == "alone":
        found.append(
            Caution(
                "Alone under a free bar: set the safeties, and leave two repetitions or more.",
                ("free-bench-alone", "free-squat-alone"),
            )
        )
    return tuple(found)


def cautions_text(intake: Intake | None = None) -> str:
    """The cautions as lines."""
    lines = [
        folded(one.words, WIDTH, initial_indent="  - ", subsequent_indent="    ")
        for one in cautions(intake)
    ]
    return "\n".join(["Take care", *lines])
