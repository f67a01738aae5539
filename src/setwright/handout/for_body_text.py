"""A movement computed for one body, as text for the terminal and as plain data."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

import numpy as np

from setwright.anatomy.atlas import part
from setwright.exercises.for_body import ForBody
from setwright.exercises.model import PublishedShare
from setwright.handout.wording import folded

WIDTH: Final = 88
POINTS: Final = 5
HEAD: Final = (
    f"  {'part':<34}{'share':>6}  {'90 % interval':<14}{'active':>7}{'length':>8}  used instead"
)
KEY: Final = (
    "share: work beside the hardest-working part (a plan counts it from a quarter on); active: at "
    "the sticking point, 0 to 1; length: fibre length over optimal length where the part is loaded"
)
INSTEAD: Final = "; used instead: the share plans count with, and where it stands"
PASSED_ON: Final = (
    "  at the hardest point that is less than the load: speed carries it past, or it ends short"
)


def body_words(found: ForBody) -> str:
    """The body a movement was computed for."""
    build = found.build
    words = f"{build.stature_m * 100:.0f} cm, {build.mass_kg:.0f} kg, {build.sex}"
    for name, factor in build.lengths.items():
        words += f", {name} {100 * (factor - 1):+.0f} %"
    return words


def load_words(found: ForBody) -> str:
    """The load of the set, with its unit."""
    return {
        "kg": f"{found.load:.0f} kg",
        "N·m": f"{found.load:.0f} N·m",
        "bodyweights": f"{found.load:.2f} × the body's own weight",
    }[found.unit]


def where_words(at: float) -> str:
    """A point of the range in words, 0 stretched to 1 shortened."""
    if at <= 0.06:
        return "where the working muscles are longest"
    if at >= 0.94:
        return "where the working muscles are shortest"
    return f"{100 * at:.0f} % of the way from long to short"


def for_body_text(
    found: ForBody, published: Mapping[str, PublishedShare] | None = None, done: str = ""
) -> str:
    """Parts, joints, strength curve and lower back of one set near its limit.

    Args:
        found: the movement, computed.
        published: by part, shares that plans count with instead of the computed ones.
        done: in which way it is done, when not the usual one: ``depth parallel``.
    """
    published = published or {}
    way = f"; {done}" if done else ""
    lines = [
        _filled(
            f"computed for {body_words(found)}{way}: one set near its limit, the forces of "
            "standing still at each point"
        ),
        "",
        HEAD,
    ]
    for row in found.parts:
        span = "" if row.low is None or row.high is None else f"{row.low:.2f} to {row.high:.2f}"
        told = published.get(row.part)
        beside = f"{told.share:.2f} {told.source}" if told else ""
        lines.append(
            f"  {part(row.part).name:<34}{row.share:>6.2f}  {span:<14}{row.activation:>7.2f}"
            f"{row.loaded_ratio:>8.2f}  {beside}".rstrip()
        )
    shown = {row.part for row in found.parts}
    lines += [
        f"  {part(ident).name:<34}{'little':>6}  {'':<29}  {told.share:.2f} {told.source}"
        for ident, told in published.items()
        if ident not in shown
    ]
    lines += [
        _filled(KEY + (INSTEAD if published else "")),
        "",
        f"  load of the set: {load_words(found)}; hardest {where_words(found.hardest)}",
        f"  largest load from long to short: {_along(found)}",
        *([PASSED_ON] if found.effort.strongest.min() < found.load else []),
        _filled("the set ends with: " + "; ".join(part(one).name for one in found.ends)),
        "",
        "  joints hold at most",
    ]  # fmt: skip
    unit = {"kg": "a kg", "N·m": "a N·m", "bodyweights": "a body weight"}[found.unit]
    lines += [
        f"    {joint.action:<26}{joint.moment:>5.0f} N·m  {joint.per_kg:>5.2f} N·m/kg of the body"
        f"{joint.per_load:>8.2f} N·m {unit} of load"
        for joint in found.joints
    ]
    spine = found.spine
    lines += [
        "",
        f"  lower back holds up to {spine.moment.max():.0f} N·m; estimate of its compression up to "
        f"{spine.compression.max() / 1000:.1f} kN",
    ]
    return "\n".join(lines)


def _along(found: ForBody) -> str:
    """The strength curve at a few points; far above the set it is only said to be so."""
    strongest = found.effort.strongest
    places = np.linspace(0, len(strongest) - 1, POINTS).round().astype(int)
    digits = 2 if found.unit == "bodyweights" else 0
    most = 10 * found.load
    return ", ".join(
        f"{strongest[k]:.{digits}f}" if strongest[k] <= most else f"over {most:.{digits}f}"
        for k in places
    )


def _filled(words: str) -> str:
    return folded(words, WIDTH, initial_indent="  ", subsequent_indent="    ")


def for_body_data(found: ForBody) -> dict[str, Any]:
    """The same as plain data for machines."""
    build = found.build
    return {
        "build": {
            "stature_m": build.stature_m,
            "mass_kg": build.mass_kg,
            "sex": build.sex,
            "lengths": dict(build.lengths),
        },
        "movement": found.movement,
        "load": found.load,
        "unit": found.unit,
        "hardest_at": found.hardest,
        "ends": found.ends,
        "parts": found.parts,
        "joints": found.joints,
        "range": found.effort.asked.range_,
        "largest_load": np.minimum(found.effort.strongest, 1e6),
        "spine": found.spine,
    }
