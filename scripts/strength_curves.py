"""Write docs/strength-curves.md: `python scripts/strength_curves.py`."""

from pathlib import Path

import numpy as np

from setwright.mechanics.strength import Measured, capacity_curve, torques

TARGET = Path(__file__).parents[1] / "docs" / "strength-curves.md"
BODIES = {"male": (75.0, 1.77), "female": (61.0, 1.65), "both": (75.0, 1.77)}
NEAR_DEG = 15


def row(one: Measured) -> str:
    """One line of the table."""
    angles, moments = capacity_curve(one)
    best = float(angles[moments.argmax()])
    published, peak = one.best_deg(), one.peak(*BODIES[one.sex])
    off = "" if published is None or len(angles) == 1 else f"{best - published:+.0f}"
    where = f"{best:.0f}" if len(angles) > 1 else f"(at {best:.0f})"
    cells = [
        one.action,
        {"both": "both"}.get(one.sex, one.sex),
        "" if published is None else f"{published:.0f}",
        where,
        off,
        "" if not off else ("yes" if abs(float(off)) <= NEAR_DEG else "no"),
        "" if peak is None else f"{peak:.0f}",
        f"{moments.max():.0f}",
        "" if peak is None else f"{moments.max() / peak:.2f}",
        one.source,
    ]
    return "| " + " | ".join(cells) + " |"


def shape(one: Measured) -> str:
    """Torque over its own peak at five angles, published and model."""
    angles, moments = capacity_curve(one)
    places = np.linspace(angles[0], angles[-1], 6).round()
    published = one.torque(places, *BODIES[one.sex])
    model = np.interp(places, angles, moments)
    published, model = published / one.peak(*BODIES[one.sex]), model / moments.max()
    pairs = [f"{p:.2f} / {m:.2f}" for p, m in zip(published, model, strict=True)]
    at = ", ".join(f"{a:.0f}" for a in places)
    return f"| {one.action} | {one.sex} | {at} | " + " | ".join(pairs) + " |"


def text() -> str:
    """The whole page."""
    file = torques()
    lines = [
        "# Strength curves: the muscles' figures against measured torques",
        "",
        "Written by `scripts/strength_curves.py`. The model's moment is the sum over every muscle",
        "that helps, each fully active, fibre length and tendon stretch included, passive force",
        "not. Angles in degrees, torques in N m for 75 kg and 1.77 m (women 61 kg and 1.65 m). The",
        "posture of the neighbouring joints was mostly not read: knee with the hip at 85, hip with",
        "the knee at 90, ankle with the knee at 10 are assumed. Where people were measured in",
        "steps, the model is read at the same steps.",
        "",
        "| action | sex | published peak at | model peak at | off | within 15 | published N m "
        "| model N m | model / published | source |",
        "|---|---|---|---|---|---|---|---|---|---|",
        *[row(one) for one in file.measured],
        "",
        "Two measured curves of hip flexion contradict each other, so neither is met. A model",
        "stronger than people is expected: nobody activates every helper fully, and the forces of",
        "the leg model come from large muscles; only ratios between muscles are used.",
        "",
        "## Shape, torque over its own peak, published / model",
        "",
        "| action | sex | at | 1 | 2 | 3 | 4 | 5 | 6 |",
        "|---|---|---|---|---|---|---|---|---|",
        *[shape(one) for one in file.measured if one.cosine is not None],
        "",
        "## Sources",
        "",
        *[
            f"- {key}: {s.title}, {s.journal}, {s.year}, {s.doi or 'no DOI'} ({s.read}). {s.note}"
            for key, s in file.sources.items()
        ],
        "",
    ]
    return "\n".join(lines)


if __name__ == "__main__":
    TARGET.write_text(text(), encoding="utf-8")
    print(f"{TARGET.name} written")
