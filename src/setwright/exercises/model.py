"""What an exercise declares: mechanics and handling, no opinions."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from setwright.anatomy.joints import Action
from setwright.documents.base import Document

Unit01 = Annotated[float, Field(ge=0, le=1)]

Pattern = Literal[
    "squat",
    "lunge",
    "hinge",
    "knee extension",
    "knee flexion",
    "hip extension",
    "hip abduction",
    "hip adduction",
    "hip flexion",
    "calf raise",
    "ankle dorsiflexion",
    "horizontal press",
    "incline press",
    "vertical press",
    "dip",
    "chest fly",
    "vertical pull",
    "horizontal pull",
    "shoulder extension",
    "shrug",
    "lateral raise",
    "front raise",
    "rear raise",
    "shoulder rotation",
    "elbow flexion",
    "elbow extension",
    "wrist and grip",
    "trunk flexion",
    "trunk extension",
    "trunk rotation",
    "trunk side bend",
    "carry",
    "neck",
]
Resistance = Literal["free weight", "cable", "machine", "band", "bodyweight"]
# What the load is made of, which decides the steps it can take.
Loading = Literal[
    "barbell", "dumbbell pair", "dumbbell", "kettlebell", "stack", "plates", "bodyweight", "band"
]
# Kit a gym can have. An exercise lists alternatives; each alternative is a set of these.
Kit = Literal[
    "barbell",
    "curl bar",
    "trap bar",
    "rack",
    "bench",
    "incline bench",
    "dumbbells",
    "kettlebells",
    "cable",
    "smith machine",
    "leg press",
    "hack squat",
    "leg extension",
    "seated leg curl",
    "lying leg curl",
    "standing leg curl",
    "standing calf machine",
    "seated calf machine",
    "hip abductor machine",
    "hip adductor machine",
    "multi-hip machine",
    "glute machine",
    "back extension bench",
    "chest press machine",
    "incline press machine",
    "shoulder press machine",
    "fly machine",
    "rear fly machine",
    "lateral raise machine",
    "pulldown",
    "assisted pull-up machine",
    "seated row machine",
    "chest supported row",
    "pullover machine",
    "preacher bench",
    "curl machine",
    "triceps machine",
    "dip station",
    "pull-up bar",
    "abdominal machine",
    "roman chair",
    "roller wheel",
    "neck harness",
    "landmine",
    "band",
    "belt squat",
    "nordic anchor",
    "step",
    "sliders",
    "tibialis bar",
    "shrug machine",
    "weight belt",
    "suspension straps",
]
RepCurve = Literal["general", "bench press", "leg press"]


class PublishedShare(Document):
    """A share taken from a finding instead of the computed one."""

    share: Unit01
    source: str


class Exercise(Document):
    """One exercise of the catalogue."""

    id: str
    name: str
    synonyms: tuple[str, ...] = ()
    pattern: Pattern
    kind: Literal["compound", "isolation"]
    actions: dict[Action, Unit01] = Field(
        min_length=1,
        description="what it asks of the joints in words, for what a person must avoid; "
        "1 is the joint that ends the set",
    )
    resistance: Resistance
    loading: Loading
    kit: tuple[tuple[Kit, ...], ...] = Field(
        description="alternatives, each a set of kit; an empty alternative needs none"
    )
    bodyweight_share: Unit01 = Field(0.0, description="share of body mass that is lifted")
    sides: Literal["both", "one"] = "both"
    setup_s: int = Field(ge=0, le=300)
    stability: Unit01 = Field(description="1 supported by a machine, 0 balancing is the limit")
    whole_body: Unit01 = Field(description="how much the set taxes breath and the whole person")
    skill: Literal["low", "moderate", "high"] = "low"
    pins_lifter: bool = Field(False, description="a failed repetition can trap the lifter")
    partials: bool = Field(False, description="lengthened partials suit it")
    rep_curve: RepCurve = "general"
    rep_band: tuple[int, int] = Field(description="sensible repetitions, lowest and highest")
    rep_s: float = Field(3.5, gt=0.5, le=12, description="seconds a repetition without a tempo")
    published: dict[str, PublishedShare] = Field(default_factory=dict)
    findings: tuple[str, ...] = ()
    cues: tuple[str, ...] = Field(min_length=2, max_length=5)
    cautions: tuple[str, ...] = ()


class PatternFile(Document):
    """One file of the catalogue: one movement pattern."""

    setwright: Literal["exercises/1"]
    pattern: Pattern
    exercises: tuple[Exercise, ...] = Field(min_length=1)
