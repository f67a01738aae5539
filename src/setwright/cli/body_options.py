"""The options that say whose body is meant, for commands that compute a movement."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import TYPE_CHECKING, Any, TypeVar

import click

from setwright.documents.errors import DocumentError, Fault

if TYPE_CHECKING:
    from setwright.mechanics.body import Build

F = TypeVar("F", bound=Callable[..., Any])
STATURE_CM = (120.0, 230.0)
MASS_KG = (30.0, 250.0)
# How far a length may be from the usual one of that stature, percent.
FARTHEST = 30.0
# The words a coach uses, and the segments they change.
SEGMENTS = {
    "femur": ("thigh",),
    "shin": ("shank",),
    "arm": ("upper arm", "forearm"),
    "torso": ("thorax",),
}
_PERCENT = re.compile(r"\s*([+-]?\d+(?:[.,]\d+)?)\s*%?\s*")


def body_options(command: F) -> F:
    """Stature, mass, sex and lengths of segments."""
    for option in (
        click.option("--length", "lengths", multiple=True, metavar="SEGMENT=+6%",
                     help="Length of any segment against the usual one; may be repeated."),
        *(
            click.option(f"--{word}", metavar="+6%", help=f"Length of the {' and '.join(names)} "
                         "against the usual one of that stature.")
            for word, names in reversed(SEGMENTS.items())
        ),
        click.option("--sex", type=click.Choice(["male", "female"]), help="Which body table."),
        click.option("--mass", type=float, metavar="KG", help="Body mass in kg."),
        click.option("--stature", type=float, metavar="CM", help="Height in cm."),
    ):  # fmt: skip
        command = option(command)
    return command


def build_of(
    stature: float | None,
    mass: float | None,
    sex: str | None,
    lengths: tuple[str, ...],
    words: dict[str, str | None],
) -> Build:
    """The build the options say.

    Args:
        stature: height in cm, or None for the usual one.
        mass: body mass in kg, or None.
        sex: ``male``, ``female`` or None.
        lengths: ``segment=+6%`` texts.
        words: by word of ``SEGMENTS``, its percentage or None.

    Raises:
        DocumentError: naming every option that cannot be.
    """
    from setwright.mechanics.body import Build, landmark_names, segment_names

    faults: list[Fault] = []
    factors: dict[str, float] = {}
    known = (*segment_names(), *landmark_names())
    for word, text in words.items():
        factor = _factor(f"--{word}", text, faults)
        factors.update({name: factor for name in SEGMENTS[word] if factor is not None})
    for text in lengths:
        name, _, percent = text.partition("=")
        name = name.strip().lower()
        if name not in known:
            faults.append(Fault("--length", repr(text), f"SEGMENT=+6%, one of {', '.join(known)}"))
        elif (factor := _factor("--length", percent, faults)) is not None:
            factors[name] = factor
    for field, value, (low, high), unit in (
        ("--stature", stature, STATURE_CM, "cm"),
        ("--mass", mass, MASS_KG, "kg"),
    ):
        if value is not None and not low <= value <= high:
            faults.append(Fault(field, f"{value:g}", f"{low:g} to {high:g} {unit}"))
    if faults:
        raise DocumentError("exercise", tuple(faults))
    usual = Build()
    return Build(
        usual.stature_m if stature is None else stature / 100,
        usual.mass_kg if mass is None else mass,
        usual.sex if sex is None else sex,  # type: ignore[arg-type]
        factors,
    )


def _factor(option: str, text: str | None, faults: list[Fault]) -> float | None:
    if text is None:
        return None
    found = _PERCENT.fullmatch(text)
    percent = float(found[1].replace(",", ".")) if found else FARTHEST + 1
    if abs(percent) > FARTHEST:
        allowed = f"a change in percent from -{FARTHEST:g}% to +{FARTHEST:g}%"
        faults.append(Fault(option, repr(text), allowed))
        return None
    return 1 + percent / 100
