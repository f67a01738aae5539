"""Wishes that exclude each other: said at once, instead of a week that ignores one of them."""

from __future__ import annotations

from setwright.anatomy.atlas import index, resolve
from setwright.documents.errors import DocumentError, Fault
from setwright.exercises import catalogue
from setwright.exercises.kit import stock_of
from setwright.plan.intake import Intake
from setwright.plan.limits import avoidance
from setwright.response.targets import priority_weights

# From this share on an exercise is one for the part.
TRAINS_FROM = 0.9


def check_wishes(intake: Intake) -> None:
    """Refuse aims that the person's own avoidances or other aims make void.

    A wish that only the kit forbids is no contradiction: the best attainable week is designed and
    says so.

    Raises:
        DocumentError: naming each emphasised muscle whose every exercise is avoided, or aims that
            leave nothing to train.
    """
    if not priority_weights(intake).any():
        raise DocumentError(
            "intake", (Fault("aims.leave_out", "everything left out", "at least one muscle"),)
        )
    faults = tuple(
        Fault(
            f"aims.emphasise.{position}",
            f"{word!r}, but every exercise for it that the kit allows is under avoid",
            "an avoid list that leaves one exercise for it, or no emphasis",
        )
        for position, word in enumerate(intake.aims.emphasise)
        if _avoided_away(word, intake)
    )
    if faults:
        raise DocumentError("intake", faults)


def _avoided_away(word: str, intake: Intake) -> bool:
    """Whether the kit has exercises for a muscle and the avoidances take them all."""
    columns = [index()[part] for part in resolve(word)]
    gym = stock_of(intake.gym, intake.kit)
    shares = catalogue.shares()
    serving = [
        exercise
        for exercise in catalogue.exercises()
        if shares[catalogue.row(exercise.id), columns].max() >= TRAINS_FROM and gym.can_do(exercise)
    ]
    return bool(serving) and all(avoidance(intake, exercise) is not None for exercise in serving)
