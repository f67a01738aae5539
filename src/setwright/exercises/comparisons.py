"""Published comparisons between exercises, parts and conditions, read from ``comparisons/*.yaml``.

Each is one direction a trial, an imaging study or a moment study found, in a form that the computed
profiles can be held against. What cannot be put in that form is listed with the reason.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any, Final, Literal

from pydantic import Field, field_validator, model_validator

from setwright.anatomy.atlas import muscles, parts
from setwright.anatomy.joints import Action
from setwright.documents.base import Document
from setwright.documents.knowledge import load_folder
from setwright.mechanics.movement import Posture

Kind = Literal["longitudinal", "acute imaging", "moment", "activity", "length"]
Quantity = Literal[
    "growth",
    "share",
    "activation",
    "peak moment",
    "mean moment",
    "load",
    "arm",
    "length change",
]
Relation = Literal[">", ">=", "=", "> 0", "about 0"]
OF_PARTS: Final = ("growth", "share", "activation", "arm", "length change")
OF_ACTIONS: Final = ("peak moment", "mean moment", "arm")
IN_POSTURES: Final = ("arm", "length change")
ALONE: Final = ("> 0", "about 0")
# What the right side takes over from the left when it does not say.
INHERITED: Final = ("does", "parts", "over", "actions", "load_kg", "load_share", "posture", "to")


class Side(Document):
    """One side of a comparison.

    Attributes:
        does: exercises or trial movements done together, a set of each.
        parts: parts or muscles; the figure is their mean by volume.
        over: parts or muscles whose figure divides that of ``parts``.
        actions: what the muscles do at the joint; of several the larger moment counts.
        load_kg: the load, kg, where the study fixed it.
        load_share: the load as a share of the largest one, where the study fixed that.
        posture: angles for an arm, or the first ones for a change of length.
        to: the second angles for a change of length.
        condition: what else the study says of this side.
        measured_percent: growth that was measured, percent over the trial.
    """

    does: tuple[str, ...] = ()
    parts: tuple[str, ...] = ()
    over: tuple[str, ...] = ()
    actions: tuple[Action, ...] = ()
    load_kg: float | None = Field(None, ge=0)
    load_share: float | None = Field(None, gt=0, le=1)
    posture: Posture = Field(default_factory=dict)
    to: Posture = Field(default_factory=dict)
    condition: str = ""
    measured_percent: float | None = None

    @field_validator("does", "parts", "over", "actions", mode="before")
    @classmethod
    def _several(cls, value: Any) -> Any:
        return (value,) if isinstance(value, str) else value


class Comparison(Document):
    """One published direction.

    Attributes:
        id: unique name.
        finding: id of the finding it stands in.
        kind: what kind of study it comes from.
        quantity: what is compared.
        left: one side.
        relation: how the left side stands to the right one, or to nothing.
        right: the other side; None when the left stands against nothing.
        calibrates: whether its measured growth may calibrate the growth figure.
        confidence: how far the source is to be trusted.
        reason: why the computed profile misses it, when it does.
    """

    id: str
    finding: str
    kind: Kind
    quantity: Quantity
    left: Side
    relation: Relation
    right: Side | None = None
    calibrates: bool = False
    confidence: str
    reason: str = ""

    @model_validator(mode="before")
    @classmethod
    def _right_like_left(cls, data: Any) -> Any:
        if isinstance(data, dict) and isinstance(data.get("right"), dict):
            left = data["left"]
            taken = {name: left[name] for name in INHERITED if name in left}
            data = {**data, "right": {**taken, **data["right"]}}
        return data

    @model_validator(mode="after")
    def _whole(self) -> Comparison:
        if (self.right is None) != (self.relation in ALONE):
            raise ValueError(f"{self.id}: '{self.relation}' and a right side do not go together")
        for side in self.sides:
            wanted = {
                "does": self.quantity not in IN_POSTURES,
                "posture": self.quantity in IN_POSTURES,
                "parts": self.quantity in OF_PARTS,
                "actions": self.quantity in OF_ACTIONS,
            }
            for name, needed in wanted.items():
                if bool(getattr(side, name)) != needed:
                    need = "needs" if needed else "has no use for"
                    raise ValueError(f"{self.id}: {self.quantity} {need} '{name}'")
        if self.calibrates and not (self.kind == "longitudinal" and self.measured):
            raise ValueError(f"{self.id}: only growth measured on every side calibrates")
        return self

    @property
    def measured(self) -> bool:
        """Whether growth was measured, in percent, on every side."""
        return all(side.measured_percent is not None for side in self.sides)

    @property
    def sides(self) -> tuple[Side, ...]:
        """The left side, and the right one when there is one."""
        return (self.left,) if self.right is None else (self.left, self.right)


class Study(Document):
    """The comparisons of one finding; what stands here holds for all that do not say otherwise.

    Attributes:
        calibrates: growth measured on every side of a comparison may calibrate.
        comparisons: the fields of a ``Comparison`` that are not said here.
    """

    finding: str
    kind: Kind
    quantity: Quantity
    confidence: str
    calibrates: bool = False
    comparisons: tuple[dict[str, Any], ...] = Field(min_length=1)


class Unexpressed(Document):
    """A comparison, or a part of a finding, that cannot be held against a profile."""

    finding: str
    what: str
    reason: str


class ComparisonFile(Document):
    """One file of comparisons."""

    setwright: Literal["comparisons/1"]
    studies: tuple[Study, ...] = ()
    unexpressed: tuple[Unexpressed, ...] = ()


@cache
def _files() -> tuple[ComparisonFile, ...]:
    return load_folder("setwright.exercises", "comparisons", ComparisonFile)


@cache
def comparisons() -> tuple[Comparison, ...]:
    """Every comparison, in the order of the files.

    Raises:
        ValueError: when one is not whole, or two have one id.
    """
    found: dict[str, Comparison] = {}
    for study in (study for file in _files() for study in file.studies):
        common = study.model_dump(exclude={"comparisons"})
        for fields in study.comparisons:
            one = Comparison.model_validate({**common, "calibrates": False, **fields})
            if study.calibrates and one.measured and "calibrates" not in fields:
                one = one.model_copy(update={"calibrates": True})
            if one.id in found:
                raise ValueError(f"the comparison {one.id!r} stands twice")
            found[one.id] = one
    return tuple(found.values())


def unexpressed() -> tuple[Unexpressed, ...]:
    """What the findings say that no comparison expresses."""
    return tuple(one for file in _files() for one in file.unexpressed)


@cache
def _volumes() -> Mapping[str, float]:
    """Volume of each part, cm3, a figure for a whole muscle split evenly over its parts."""
    by_muscle: dict[str, list[float | None]] = {}
    for part in parts():
        by_muscle.setdefault(part.muscle, []).append(part.volume_cm3)
    found = {}
    for part in parts():
        of_muscle = by_muscle[part.muscle]
        known = [volume for volume in of_muscle if volume is not None]
        whole = len(known) == len(of_muscle)
        even = sum(known) / len(of_muscle) if known else UNKNOWN_VOLUME_CM3
        found[part.id] = float(part.volume_cm3) if whole and part.volume_cm3 else even
    return found


# Weight of a part of a muscle whose volume nobody of our sources states.
UNKNOWN_VOLUME_CM3: Final = 100.0


def volumes(words: tuple[str, ...]) -> Mapping[str, float]:
    """The parts meant by part and muscle ids, with their volumes, cm3.

    Raises:
        KeyError: when a word is neither.
    """
    found = {}
    for word in words:
        chosen = [p.id for p in parts() if word == p.id or (word in muscles() and word == p.muscle)]
        if not chosen:
            raise KeyError(f"no part or muscle has the id {word!r}")
        found.update({part: _volumes()[part] for part in chosen})
    return found
