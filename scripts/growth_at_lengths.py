"""Growth at long against short muscle length, pooled over the sites of a muscle.

The site figures are open data under non-commercial terms and stay outside the project; what is
pooled from them here stands in growth_at_lengths.json and may be quoted with its source.
"""

from __future__ import annotations

import csv
import json
from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any, Final

HERE = Path(__file__).parent
POOLED = HERE / "growth_at_lengths.json"
# Beside the project; absent in most copies.
SITES = HERE.parent.parent / "shared" / "data" / "range-of-motion-growth.csv"
TITLE: Final = (
    "Regional Hypertrophy with Resistance Training: Does Muscle Length Matter? A Systematic"
    " Review and Meta-Analysis (preprint, 2024, doi 10.51224/SRXIV.464), its open data"
)
PARTS: Final[Mapping[str, tuple[str, ...]]] = {
    "VL": ("vastus-lateralis",),
    "RF": ("rectus-femoris",),
    "Front thigh": ("quadriceps",),
    "Back thigh": ("hamstrings", "adductors"),
    "Elbow Flexors": ("biceps", "brachialis"),
    "Triceps Brachii Long Head": ("triceps-long-head",),
}
# Movements of each study's conditions. Exercises done together are a set of each.
DOES: Final[Mapping[tuple[str, str], tuple[str, ...]]] = {
    ("1", "long"): ("leg-extension-held-at-90",),
    ("1", "short"): ("leg-extension-held-at-50",),
    ("2", "long"): ("back-squat",),
    ("2", "short"): ("quarter-squat",),
    ("4", "long"): ("half-squat", "leg-extension-90-to-0"),
    ("4", "short"): ("squat-to-50", "leg-extension-50-to-0"),
    ("5", "long"): ("squat-90-to-40", "leg-extension-90-to-40"),
    ("5", "short"): ("squat-to-50", "leg-extension-50-to-0"),
    ("7", "long"): ("leg-extension-long-half",),
    ("7", "short"): ("leg-extension-short-half",),
    ("7", "full"): ("leg-extension-100-to-30",),
    ("8", "long"): ("preacher-curl-long-half",),
    ("8", "short"): ("preacher-curl-short-half",),
    ("10", "long"): ("elbow-extension-overhead-140-to-70",),
    ("10", "short"): ("elbow-extension-at-side-90-to-10",),
    ("12", "long"): ("incline-curl-0-to-110",),
    ("12", "short"): ("preacher-curl-55-to-130",),
}
# Study 7 has two groups over the whole range beside its two halves; its columns tell both alike.
FULL_FROM: Final = 0.4


@dataclass(frozen=True)
class Pooled:
    """Growth of one muscle in one condition of a study.

    Attributes:
        study: number of the study in the meta-analysis.
        length: long, short or full range.
        does: movements that stand for the condition.
        parts: parts or muscles that were measured.
        percent: growth over the trial, percent, mean of the sites.
        sites: site measurements behind it.
        people: people in the condition.
    """

    study: str
    length: str
    does: tuple[str, ...]
    parts: tuple[str, ...]
    percent: float
    sites: int
    people: int


def pooled(path: Path = POOLED) -> tuple[Pooled, ...]:
    """The pooled figures as committed."""
    rows = json.loads(path.read_text(encoding="utf-8"))["pooled"]
    return tuple(
        Pooled(**{**row, "does": tuple(row["does"]), "parts": tuple(row["parts"])}) for row in rows
    )


def pool(rows: Iterable[Mapping[str, str]]) -> tuple[Pooled, ...]:
    """Site rows pooled by study, condition and muscle.

    A site counts by its people over the square of its relative spread before training, that is,
    by the inverse variance of its percentage, the correlation of before and after being alike.
    """
    found: dict[tuple[str, str, str], list[tuple[float, float, int]]] = {}
    for row in rows:
        before, after, spread = (float(row[name]) for name in ("m_pre", "m_post", "sd_pre"))
        people = int(row["n"])
        site = (100 * (after / before - 1), people * (before / spread) ** 2, people)
        found.setdefault((row["study_number"], _length(row), row["muscle"]), []).append(site)
    return tuple(
        Pooled(
            study,
            length,
            DOES[study, length],
            PARTS[muscle],
            round(sum(p * w for p, w, _ in sites) / sum(w for _, w, _ in sites), 1),
            len(sites),
            max(people for *_, people in sites),
        )
        for (study, length, muscle), sites in found.items()
    )


def _length(row: Mapping[str, str]) -> str:
    if row["study_number"] == "7" and float(row["proportion_of_rom"]) > FULL_FROM:
        return "full"
    return row["muscle_length"].lower()


def read_sites() -> tuple[Pooled, ...] | None:
    """The pooled figures from the open data, or None when it is not there."""
    if not SITES.exists():
        return None
    with SITES.open(encoding="utf-8", newline="") as lines:
        return pool(csv.DictReader(lines))


def write(found: tuple[Pooled, ...]) -> None:
    """Put the pooled figures beside this script."""
    data: dict[str, Any] = {
        "about": "Written by scripts/fit_growth.py; percent growth, mean of the sites of a muscle.",
        "source": TITLE,
        "pooled": [asdict(one) for one in found],
    }
    POOLED.write_text(json.dumps(data, indent=1, ensure_ascii=False) + "\n", encoding="utf-8")
