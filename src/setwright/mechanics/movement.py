"""What a movement declares: postures, what holds the body up, and what it moves.

Slow repetitions are assumed: the forces are those of standing still at each point of the range.
Angles are degrees in the sense of ``anatomy.joints``; world axes are x forward, y up, z to the
person's right.
"""

from __future__ import annotations

from typing import Annotated, Final, Literal, get_args

from pydantic import Field, model_validator

from setwright.documents.base import Document

Block = Literal["leg", "trunk", "arm", "neck"]
Angle = Literal[
    "lean",
    "roll",
    "hip flexion",
    "hip abduction",
    "hip internal rotation",
    "knee flexion",
    "ankle dorsiflexion",
    "ankle inversion",
    "trunk flexion",
    "trunk side bend",
    "trunk rotation",
    "neck flexion",
    "neck side bend",
    "neck rotation",
    "scapula protraction",
    "scapula elevation",
    "scapula upward rotation",
    "arm plane",
    "arm elevation",
    "arm rotation",
    "elbow flexion",
    "forearm pronation",
    "wrist flexion",
    "finger flexion",
    "other hip flexion",
    "other hip abduction",
    "other knee flexion",
    "other ankle dorsiflexion",
    "other arm plane",
    "other arm elevation",
    "other arm rotation",
    "other elbow flexion",
]
ANGLES: Final[tuple[str, ...]] = get_args(Angle)
Point = Literal[
    "hands",
    "upper back",
    "low on the back",
    "front of the shoulders",
    "chest",
    "pelvis",
    "hips front",
    "thighs above the knee",
    "shins at the ankle",
    "backs of the knees",
    "heels",
    "balls of the feet",
    "mid feet",
    "elbows",
    "forehead",
    "back of the head",
]
Support = Literal[
    "feet",
    "foot",
    "heels",
    "balls of the feet",
    "toes of the other foot",
    "upper thighs",
    "seat",
    "low back",
    "pelvis",
    "trunk",
    "upper back",
    "hands",
    "elbows",
    "other elbow",
    "knees",
    "ankles",
]
Vector = tuple[float, float, float]
Posture = dict[Angle, Annotated[float, Field(ge=-200, le=200)]]
FIXED: Final = ("pelvis", "trunk")


class Load(Document):
    """One way the load acts on the body.

    Attributes:
        kind: ``weight`` hangs down; ``pull`` has a direction or comes from a pulley; ``torque``
            turns a joint, as a machine with its axis at the joint does.
        at: where a weight or a pull acts.
        direction: direction of the force on the body, world axes; for a pull without a pulley.
        frame: axes of ``direction``: the world, or the segment the load acts on (a pad that
            always pushes at a right angle to the shin).
        pulley: where a cable comes from, metres from the middle of the hips at the shortened end
            of the range; it stays there while the hips travel; the force points towards it.
        about: the coordinate a torque acts on; it acts against raising (``sense`` +1) or lowering
            (-1) it, that is, the muscles have to raise or lower it.
        sense: see ``about``.
        curve: relative size of the load over the range, stretched to shortened, any number of
            points evenly spread; a cam, a band, a lever.
        share: how much of the load acts here when it is split over several places.
    """

    kind: Literal["weight", "pull", "torque"]
    at: Point | None = None
    direction: Vector | None = None
    frame: Literal["world", "segment"] = "world"
    pulley: Vector | None = None
    about: Angle | None = None
    sense: Literal[-1, 1] = 1
    curve: tuple[Annotated[float, Field(ge=0, le=5)], ...] = (1.0,)
    share: float = Field(1.0, ge=0, le=4)

    @model_validator(mode="after")
    def _complete(self) -> Load:
        if self.kind == "torque":
            if self.about is None:
                raise ValueError("a torque needs 'about', the joint it acts on")
        elif self.at is None:
            raise ValueError(f"a {self.kind} needs 'at', the place it acts on")
        if self.kind == "pull" and (self.direction is None) == (self.pulley is None):
            raise ValueError("a pull needs either 'direction' or 'pulley'")
        return self


class Between(Document):
    """A key posture inside the range.

    Attributes:
        at: 0 (stretched) to 1 (shortened).
        posture: the angles that differ from a straight run between the ends.
    """

    at: float = Field(gt=0, lt=1)
    posture: Posture


class Movement(Document):
    """One movement, from where the working muscles are longest to where they are shortest.

    Attributes:
        ends: parts of the body that end the set.
        holds: parts of the body that must hold and may not end it.
        side: ``one`` when the working (right) side carries the load alone.
        support: what carries the body; ``pelvis`` and ``trunk`` are held by a seat, bench or pad,
            whatever they ask of it; ``seat``, ``low back`` and ``upper back`` only press on it;
            ``foot`` is the working one.
        carried: joints whose moment a seat, pad or strap takes up, so that muscles need not.
        hold: angles that stay; unnamed angles are 0 (the anatomical position).
        stretched: angles where the working muscles are longest.
        shortened: angles where they are shortest; equal when nothing moves.
        between: key postures on the way.
        arms_hang: the arms hang down from the leaning trunk, drawn back towards the legs by this
            many degrees when the trunk lies level; takes the place of their angles.
        balance: the angle that is found so that the body balances over its support.
        load: where the load acts; empty for pure bodyweight work.
        load_guess: load in body masses, for finding the balance.
        bodyweight: the body itself is what is lifted; its weight, and with it a load of
            ``load_guess`` body masses, scales with the effort.
        side_force: sideways force the hands or feet may use, share of what they carry (a bar can
            be pushed outwards, a dumbbell cannot).
        grip: how the forearm is kept from turning.
    """

    ends: tuple[Block, ...] = Field(min_length=1)
    holds: tuple[Block, ...] = ()
    side: Literal["both", "one"] = "both"
    support: tuple[Support, ...] = Field(min_length=1)
    carried: tuple[Angle, ...] = ()
    hold: Posture = Field(default_factory=dict)
    stretched: Posture = Field(default_factory=dict)
    shortened: Posture = Field(default_factory=dict)
    between: tuple[Between, ...] = ()
    arms_hang: float | None = Field(None, ge=-60, le=60)
    balance: Angle | None = None
    load: tuple[Load, ...] = ()
    load_guess: float = Field(0.6, ge=0, le=5)
    bodyweight: bool = False
    side_force: float = Field(0.0, ge=0, le=1)
    grip: Literal["bar", "handle", "none"] = "handle"
    foot_flat: bool = Field(True, description="feet that carry stand flat: the lean follows")

    @model_validator(mode="after")
    def _moved_by_something(self) -> Movement:
        if not self.load and not self.bodyweight:
            raise ValueError("declare a 'load', or 'bodyweight: true'")
        return self
