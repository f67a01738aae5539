"""What is declared of the leg model: ranges, parts, and where paths are not to be trusted."""

from __future__ import annotations

import numpy as np

ORIGIN = {
    "file": "LaiUhlrich2022.osim",
    "sha256": "7499645500d4bca9269f27fd669bd3ed3abbeccd549d87f86cd01119a1a24366",
    "from": "opencap-org/opencap-core : opensimPipeline/Models/LaiUhlrich2022.osim @ e1a44f3",
    "licence": "Apache-2.0 (the repository's)",
    "credits": "See licences/README.md",
    "sources": [
        "Full-body musculoskeletal model for muscle-driven simulation of human gait, "
        "IEEE Trans Biomed Eng 2016, 10.1109/TBME.2016.2586891",
        "Why are antagonist muscles co-activated in my simulation? A musculoskeletal model for "
        "analysing human locomotor tasks, Ann Biomed Eng 2017, 10.1007/s10439-017-1920-7",
        "Muscle coordination retraining inspired by musculoskeletal simulations reduces knee "
        "contact force, Sci Rep 2022, 10.1038/s41598-022-13386-9",
    ],
}

RANGES = (
    ("hip flexion", -30, 130),
    ("hip abduction", -25, 45),
    ("hip internal rotation", -40, 35),
    ("knee flexion", 0, 140),
    ("ankle dorsiflexion", -45, 35),
    ("ankle inversion", -25, 25),
)
LOW = np.radians([low for _, low, _ in RANGES])
HIGH = np.radians([high for _, _, high in RANGES])
MIDDLE, HALF = (LOW + HIGH) / 2, (HIGH - LOW) / 2

PARTS: dict[str, str | None] = {
    "addbrev_r": "adductor-brevis",
    "addlong_r": "adductor-longus",
    "addmagDist_r": "adductor-magnus-adductor-part",
    "addmagIsch_r": "adductor-magnus-hamstring-part",
    "addmagMid_r": "adductor-magnus-adductor-part",
    "addmagProx_r": "adductor-magnus-adductor-part",
    "bflh_r": "biceps-femoris-long-head",
    "bfsh_r": "biceps-femoris-short-head",
    "edl_r": None,
    "ehl_r": None,
    "fdl_r": None,
    "fhl_r": None,
    "gaslat_r": "gastrocnemius-lateral",
    "gasmed_r": "gastrocnemius-medial",
    "glmax1_r": "gluteus-maximus-upper",
    "glmax2_r": "gluteus-maximus-middle",
    "glmax3_r": "gluteus-maximus-lower",
    "glmed1_r": "gluteus-medius-anterior",
    "glmed2_r": "gluteus-medius-posterior",
    "glmed3_r": "gluteus-medius-posterior",
    "glmin1_r": "gluteus-minimus",
    "glmin2_r": "gluteus-minimus",
    "glmin3_r": "gluteus-minimus",
    "grac_r": "gracilis",
    "iliacus_r": "iliacus",
    "perbrev_r": "peroneals",
    "perlong_r": "peroneals",
    "piri_r": "deep-hip-rotators",
    "psoas_r": "psoas-major",
    "recfem_r": "rectus-femoris",
    "sart_r": "sartorius",
    "semimem_r": "semimembranosus",
    "semiten_r": "semitendinosus",
    "soleus_r": "soleus",
    "tfl_r": "tensor-fasciae-latae",
    "tibant_r": "tibialis-anterior",
    "tibpost_r": "tibialis-posterior",
    "vasint_r": "vastus-intermedius",
    "vaslat_r": "vastus-lateralis",
    "vasmed_r": "vastus-medialis",
}

# Where a path is clear of jumps and flips, degrees; beyond it the length goes on straight.
CLEAR: dict[str, dict[str, tuple[float, float]]] = {
    "glmax1_r": {"hip abduction": (-10, 45), "hip internal rotation": (-20, 15)},
    "glmax2_r": {
        "hip flexion": (-30, 118),
        "hip abduction": (-12, 45),
        "hip internal rotation": (-20, 35),
    },
    "iliacus_r": {"hip flexion": (-20, 90), "hip abduction": (-25, 40)},
    "psoas_r": {"hip flexion": (-20, 90), "hip abduction": (-15, 38)},
    "recfem_r": {"knee flexion": (0, 130)},
    "tfl_r": {"hip flexion": (-30, 110)},
}

_WHY = {
    "glmax1_r": "the model's path jumps by up to 390 mm",
    "glmax2_r": "the model's path jumps by up to 9 mm",
    "iliacus_r": "the path jumps by up to 12 mm, and in deep flexion turns into a hip extensor",
    "psoas_r": "the path jumps by up to 13 mm, and in deep flexion turns into a hip extensor",
    "recfem_r": "the path flips and turns into a knee flexor",
    "tfl_r": "the path slips off and loses its flexion arm",
}

NOTES = {
    element: f"Outside {', '.join(f'{name} {low} to {high}' for name, (low, high) in box.items())}"
    f" degrees {_WHY[element]}; there the length goes on straight from the nearest clear pose."
    for element, box in CLEAR.items()
}

ANCHORS = {
    "vaslat_r": {
        "ratio": 1.05,
        "at_deg": {"knee flexion": 50},
        "source": "sarcomeres of 2.84 um in vivo over an optimum of 2.7 um, J Biomech 2016, "
        "10.1016/j.jbiomech.2016.07.013",
    }
}


def nearest_clear(element: str, q: np.ndarray) -> np.ndarray:
    """Poses moved to the nearest ones where the element's path is clear, rad."""
    low, high = LOW.copy(), HIGH.copy()
    for column, (name, _, _) in enumerate(RANGES):
        if name in CLEAR.get(element, {}):
            low[column], high[column] = np.radians(CLEAR[element][name])
    return np.clip(q, low, high)


def is_clear(element: str, q: np.ndarray) -> np.ndarray:
    """Which poses (N, C) are clear."""
    return (np.abs(nearest_clear(element, q) - q) < 1e-12).all(axis=1)
