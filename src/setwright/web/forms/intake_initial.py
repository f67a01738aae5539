"""An intake as its form shows it."""

from __future__ import annotations

from datetime import date
from typing import Any

from setwright.documents.units import from_kg
from setwright.exercises import catalogue
from setwright.plan.intake import Intake
from setwright.web.forms.intake import QUESTIONS


def initial_of(intake: Intake) -> tuple[dict[str, Any], dict[str, list[dict[str, Any]]]]:
    """What the form shows of an intake: fields, and rows of every list."""
    person: dict[str, Any] = {
        name: getattr(intake, name)
        for name in ("name", "experience", "age_band", "sex", "setting", "split", "gym", "unit")
    }
    person |= {"seed": intake.seed if intake.seed != 1 else ""}
    for name in ("body_mass_kg", "stature_cm"):
        person[name] = _shown(getattr(intake, name))
    for name in QUESTIONS:
        person[name] = "yes" if getattr(intake.screening, name) else "no"
    cleared: date | None = intake.screening.cleared_on
    person["cleared_on"] = cleared.isoformat() if cleared else ""
    for day in intake.days:
        person[f"{day.day}_minutes"] = day.minutes
        person[f"{day.day}_focus"] = day.focus or ""
    return person, {
        "aims": [
            {"aim": aim, "muscle": word}
            for aim in ("emphasise", "maintain", "leave_out")
            for word in getattr(intake.aims, aim)
        ],
        "kit": [_stock(one) for one in intake.kit],
        "avoid": [_avoided(one) for one in intake.avoid],
        "loads": [
            {
                "exercise": _name(one.exercise),
                "load": _shown(round(from_kg(one.load_kg, intake.unit), 4)),
                "reps": one.reps,
                "rir": _shown(one.rir),
            }
            for one in intake.known_loads
        ],
        "earlier": [
            {"day": one.day, "what": _name(what), "sets": sets}
            for one in intake.earlier_this_week
            for what, sets in one.sets.items()
        ],
    }


def _stock(one: Any) -> dict[str, Any]:
    row = {name: _shown(getattr(one, name)) for name in ("bar_kg", "from_kg", "to_kg", "step_kg")}
    row |= {
        name: " ".join(_shown(x) for x in getattr(one, name)) for name in ("plates_kg", "loads_kg")
    }
    return {**row, "kit": one.kit, "unit": one.unit, "single": not one.pairs}


def _avoided(one: Any) -> dict[str, Any]:
    kind = next(name for name in ("exercise", "pattern", "action") if getattr(one, name))
    what = getattr(one, kind)
    what = _name(what) if kind == "exercise" else what
    return {"kind": kind, "what": what, "reason": one.reason, "note": one.note}


def _name(ident: str) -> str:
    return catalogue.exercise(ident).name if ident in catalogue.ids() else ident


def _shown(value: float | None) -> str:
    return "" if value is None else f"{value:.10g}"
