"""Which muscle elements of the shoulder model are fitted, for which part, in which coordinates."""

from __future__ import annotations

from dataclasses import dataclass

MODEL = {
    "file": "ThoracoscapularShoulderModel.osim",
    "from": "github.com/opensim-org/opensim-core @ 0435b08, "
    "OpenSim/Tests/shared/ThoracoscapularShoulderModel.osim",
    "licence": "Apache-2.0 (repository); the original project page is reported to say CC BY 4.0",
    "credits": [
        "Muscle contributions to upper-extremity movement and work from a musculoskeletal model "
        "of the human shoulder, Frontiers in Neurorobotics, 2019, 10.3389/fnbot.2019.00090",
    ],
}

LATISSIMUS = (
    "fascicle 26.4 cm, sarcomere 2.69 of 2.7 um with the arm at the side: Architectural analysis "
    "and predicted functional capability of the human latissimus dorsi muscle, "
    "Journal of Anatomy, 2013, 10.1111/joa.12074"
)
PECTORALIS = (
    "from memory: no sarcomere length was read for this muscle; optimal length is put at the "
    "middle of its range of horizontal adduction, arm 60 degrees up and 45 degrees in front, "
    "+-0.15"
)


@dataclass(frozen=True)
class Wanted:
    """One element.

    Attributes:
        part: id of the part of the atlas.
        kind: coordinates of its path: "scapula" (thorax to scapula or clavicle), "joint"
            (scapula to arm), "thorax" or "clavicle" (thorax or clavicle to arm).
        anchor: a name in ANCHORS, or None.
        l0_m: optimal fibre length instead of the model's.
        path_of: another element whose path stands in for its own.
        path_share: how much of that path's changes it follows.
        note: what a reader must know.
    """

    part: str
    kind: str
    anchor: str | None = None
    l0_m: float | None = None
    path_of: str | None = None
    path_share: float = 1.0
    note: str = ""


@dataclass(frozen=True)
class Pose:
    """Scapula from rest and humerus (plane, elevation, axial rotation), degrees."""

    scapula: tuple[float, float, float]
    humerus: tuple[float, float, float]
    source: str


ANCHORS = {
    "latissimus": Pose((0, 0, 0), (0, 5, 0), LATISSIMUS),
    "pectoralis": Pose((0, 0, 15), (45, 60, 20), PECTORALIS),
}

_LAT = {"anchor": "latissimus", "l0_m": 0.264}
_ELBOW = "length with the elbow straight; add the change the elbow makes"
ELEMENTS = {
    "TrapeziusClavicle_S": Wanted("trapezius-upper", "scapula"),
    "TrapeziusScapula_S": Wanted(
        "trapezius-middle",
        "scapula",
        note="C7 and T1 to the acromion, which most textbooks count to the middle part",
    ),
    "TrapeziusScapula_M": Wanted("trapezius-middle", "scapula"),
    "TrapeziusScapula_I": Wanted("trapezius-lower", "scapula"),
    "Rhomboideus_S": Wanted("rhomboids", "scapula"),
    "Rhomboideus_I": Wanted("rhomboids", "scapula"),
    "LevatorScapulae": Wanted("levator-scapulae", "scapula"),
    "SerratusAnterior_S": Wanted("serratus-anterior", "scapula"),
    "SerratusAnterior_M": Wanted("serratus-anterior", "scapula"),
    "SerratusAnterior_I": Wanted("serratus-anterior", "scapula"),
    "PectoralisMinor": Wanted("pectoralis-minor", "scapula"),
    "PectoralisMajorClavicle_S": Wanted("pectoralis-clavicular", "clavicle", "pectoralis"),
    "PectoralisMajorThorax_M": Wanted("pectoralis-sternal", "thorax", "pectoralis"),
    "PectoralisMajorThorax_I": Wanted("pectoralis-costal", "thorax", "pectoralis"),
    "LatissimusDorsi_S": Wanted("latissimus-upper", "thorax", **_LAT),
    "LatissimusDorsi_M": Wanted("latissimus-lower", "thorax", **_LAT),
    "LatissimusDorsi_I": Wanted("latissimus-lower", "thorax", **_LAT),
    "DeltoideusClavicle_A": Wanted("deltoid-anterior", "clavicle"),
    "DeltoideusScapula_M": Wanted("deltoid-middle", "joint"),
    "DeltoideusScapula_P": Wanted("deltoid-posterior", "joint"),
    "TeresMajor": Wanted("teres-major", "joint"),
    "TeresMinor": Wanted("teres-minor", "joint"),
    "Supraspinatus_A": Wanted("supraspinatus", "joint"),
    "Supraspinatus_P": Wanted("supraspinatus", "joint"),
    "Infraspinatus_S": Wanted("infraspinatus", "joint"),
    "Infraspinatus_I": Wanted("infraspinatus", "joint"),
    "Subscapularis_S": Wanted("subscapularis", "joint"),
    "Subscapularis_M": Wanted("subscapularis", "joint"),
    "Subscapularis_I": Wanted("subscapularis", "joint"),
    "Coracobrachialis": Wanted("coracobrachialis", "joint"),
    "TRIlong": Wanted("triceps-long-head", "joint", note=_ELBOW),
    "BIC_brevis": Wanted("biceps-short-head", "joint", note=_ELBOW),
    "BIC_long": Wanted(
        "biceps-long-head",
        "joint",
        path_of="BIC_brevis",
        # It runs over the head of the humerus, arms of a centimetre or less (from memory).
        path_share=0.4,
        note=f"{_ELBOW}; two fifths of the path of the short head, and its fibre, for the model's "
        "own path flips behind the joint",
    ),
}
