"""Write mechanics/paths/{arm,trunk,neck}.json from the declarations in scripts/lumps.

`python scripts/declare_lump_paths.py`. A declaration gives each element's moment arms as published
(polynomials of the joint angle, cm); its length is minus their integral, so that virtual work
holds exactly. One factor a group brings the summed moment to a measured torque.
"""

import json
from collections.abc import Iterable
from pathlib import Path
from typing import Any

import numpy as np
from numpy.polynomial import Polynomial

HERE = Path(__file__).parent / "lumps"
TARGET = Path(__file__).parents[1] / "src" / "setwright" / "mechanics" / "paths"
NAMES = ("arm", "trunk", "neck")
# Turning to the left and bending to the left mirror the coordinates that are positive to the right.
SIDED = {"trunk side bend", "trunk rotation", "neck side bend", "neck rotation"}
Terms = dict[tuple[int, ...], float]


def in_u(angle: Polynomial, low_deg: float, high_deg: float) -> np.ndarray:
    """Coefficients of a polynomial of the angle (rad) as one of u in -1..1."""
    low, high = np.radians([low_deg, high_deg])
    return np.asarray(angle(Polynomial([(low + high) / 2, (high - low) / 2])).coef)


def length_terms(declared: dict[str, Any], ranges: dict[str, tuple[float, float]]) -> Terms:
    """Minus the integral of the declared arms, m, zero at the zero pose; keys are powers of u."""
    names = coordinates_of(declared)
    terms: Terms = {}

    def add(factors: dict[str, np.ndarray]) -> None:
        grids = [factors.get(name, np.ones(1)) for name in names]
        for powers in np.ndindex(*[len(g) for g in grids]):
            value = float(np.prod([g[p] for g, p in zip(grids, powers, strict=True)]))
            terms[powers] = terms.get(powers, 0.0) + value

    for name, arm_cm in declared.get("arms_cm", {}).items():
        add({name: in_u(-Polynomial(arm_cm).integ() / 100, *ranges[name])})
    if coupled := declared.get("coupled"):
        arm = -Polynomial(coupled["arm_cm"]).integ() / 100
        add(
            {
                coupled["coordinate"]: in_u(arm, *ranges[coupled["coordinate"]]),
                coupled["by"]: in_u(Polynomial(coupled["factor"]), *ranges[coupled["by"]]),
            }
        )
    return terms


def coordinates_of(declared: dict[str, Any]) -> list[str]:
    """The coordinates an element's path depends on."""
    coupled = declared.get("coupled", {})
    extra = [coupled[key] for key in ("coordinate", "by") if key in coupled]
    return list(dict.fromkeys([*declared.get("arms_cm", {}), *extra]))


def element_of(
    declared: dict[str, Any], ranges: dict[str, tuple[float, float]], sources: dict[str, str]
) -> dict[str, Any]:
    """One element of the path format, its fibre at the declared ratio in the zero pose."""
    l0, tendon = declared["l0_cm"] / 100, declared.get("tendon_cm", 0.0) / 100
    lean = float(np.radians(declared.get("pennation_deg", 0.0)))
    fibre = declared["ratio"] * l0
    along = float(np.sqrt(fibre**2 - (l0 * np.sin(lean)) ** 2))
    names = coordinates_of(declared)
    terms = length_terms(declared, ranges)
    zero = (0,) * len(names)
    terms[zero] = terms.get(zero, 0.0) + tendon + along
    rows = {p: round(v, 9) for p, v in sorted(terms.items()) if abs(v) > 5e-10}
    anchor = None
    if declared.get("measured"):
        anchor = {
            "ratio": declared["ratio"],
            "at_deg": dict.fromkeys(names, 0.0),
            "source": sources[declared["measured"]],
        }
    return {
        "element": declared["element"],
        "part": declared["part"],
        "f0_N": round(declared["f0_N"], 2),
        "l0_m": l0,
        "slack_m": tendon,
        "pennation_rad": round(lean, 5),
        "coordinates": names,
        "powers": [list(p) for p in rows],
        "coefficients_m": list(rows.values()),
        "ratio_anchor": anchor,
        "note": note_of(declared, sources),
    }


def note_of(declared: dict[str, Any], sources: dict[str, str]) -> str:
    """Where each figure comes from, in words."""
    said = [f"{what}: {sources[key]}" for what, key in declared["from"].items()]
    return "; ".join([*said, *([declared["note"]] if "note" in declared else [])])


def both_sides(declared: Iterable[dict[str, Any]]) -> list[dict[str, Any]]:
    """Right and left elements of those declared once for a pair."""
    found = []
    for one in declared:
        if not one.pop("pair", False):
            found.append(one)
            continue
        mirrored = {
            name: [-c * (-1) ** k for k, c in enumerate(arm)] if name in SIDED else arm
            for name, arm in one["arms_cm"].items()
        }
        found.append({**one, "element": one["element"] + "_r"})
        found.append({**one, "element": one["element"] + "_l", "arms_cm": mirrored})
    return found


def forces(document: dict[str, Any], declared: list[dict[str, Any]]) -> None:
    """Fill in F0: declared, or area times the group's force per area."""
    per_area = {**document.get("force_per_area", {}), **measured_forces(document, declared)}
    for one in declared:
        if "f0_N" not in one:
            one["f0_N"] = area_of(one) * per_area[one.get("group", "all")]


def area_of(declared: dict[str, Any]) -> float:
    """Declared, or volume over fibre length, cm2."""
    return float(declared.get("area_cm2") or declared["volume_cm3"] / declared["l0_cm"])


def measured_forces(document: dict[str, Any], declared: list[dict[str, Any]]) -> dict[str, float]:
    """The force per area, N/cm2, at which each group's moment meets its measured torques."""
    found = {}
    for group, targets in document.get("targets", {}).items():
        members = [{**one, "f0_N": area_of(one)} for one in declared if one["group"] == group]
        moments = unit_moments({**document, "targets": {}}, members, targets)
        weight = np.array([1 / t["sd_Nm"] for t in targets])
        wanted = np.array([t["torque_Nm"] for t in targets]) * weight
        found[group] = float(
            (moments * weight) @ wanted / ((moments * weight) @ (moments * weight))
        )
        print(f"{group}: {found[group]:.1f} N/cm2,", (found[group] * moments).round(), "N m")
    return found


def unit_moments(
    document: dict[str, Any], members: list[dict[str, Any]], targets: list[dict[str, Any]]
) -> np.ndarray:
    """Moment at the zero pose toward each target at 1 N/cm2, N m."""
    from setwright.mechanics.fibre import fibre_state, fibres
    from setwright.mechanics.path_figures import PathsFile
    from setwright.mechanics.paths import compile_paths

    ranges = {c["name"]: (c["low_deg"], c["high_deg"]) for c in document["coordinates"]}
    paths = compile_paths(
        PathsFile.model_validate(
            {
                "setwright": "paths/1",
                "model": {},
                "coordinates": document["coordinates"],
                "elements": [element_of(one, ranges, document["sources"]) for one in members],
            }
        )
    )
    lengths, arms = paths.evaluate(np.zeros((1, len(paths.coordinates))))
    f0 = np.array([one["f0_N"] for one in members])
    pull = f0 * fibre_state(lengths, fibres(paths)).force[0]
    columns = [paths.coordinates.index(t["coordinate"]) for t in targets]
    toward = arms[0][:, columns] * [t["sense"] for t in targets]
    return np.asarray(pull @ np.maximum(toward, 0.0))


def joined_with_model(elements: list[dict[str, Any]], document: dict[str, Any]) -> None:
    """Add the elbow muscles fitted to the arm model, the biceps with its forearm term."""
    fitted = json.loads((HERE / "arm26.json").read_text(encoding="utf-8"))
    ranges = {c["name"]: (c["low_deg"], c["high_deg"]) for c in document["coordinates"]}
    place = fitted["coordinate"]
    if ranges[place["name"]] != (place["low_deg"], place["high_deg"]):
        raise SystemExit("the declared elbow range is not the fitted one")
    for one in fitted["elements"]:
        if extra := document["added"].get(one["element"]):
            names = ["elbow flexion", "forearm pronation"]
            flat: Terms = {
                (p[0], 0): c for p, c in zip(one["powers"], one["coefficients_m"], strict=True)
            }
            own = coordinates_of(extra)
            for powers, value in length_terms(extra, ranges).items():
                key = tuple(powers[own.index(name)] for name in names)
                flat[key] = flat.get(key, 0.0) + value
            one["coordinates"] = names
            one["powers"] = [list(p) for p in sorted(flat)]
            one["coefficients_m"] = [round(flat[p], 9) for p in sorted(flat)]
        one["note"] = note_of(document["fitted"][one["element"]], document["sources"])
        if one["element"] in document["changes"]:
            as_change(one, ranges, document["changes"][one["element"]])
        elements.append(one)
    document["model"] = {**fitted["model"], "credits": document["credits"]}


def as_change(one: dict[str, Any], ranges: dict[str, tuple[float, float]], note: str) -> None:
    """Make the length of a muscle that crosses the shoulder too a change from the zero pose.

    The fibre ratio there, with the arm hanging, becomes its anchor.
    """
    zero = [-(high + low) / (high - low) for low, high in (ranges[c] for c in one["coordinates"])]
    length = sum(
        c * float(np.prod(np.power(zero, p)))
        for p, c in zip(one["powers"], one["coefficients_m"], strict=True)
    )
    height = one["l0_m"] * np.sin(one["pennation_rad"])
    ratio = float(np.hypot(length - one["slack_m"], height) / one["l0_m"])
    constant = one["powers"].index([0] * len(one["coordinates"]))
    one["coefficients_m"][constant] = round(one["coefficients_m"][constant] - length, 9)
    one["ratio_anchor"] = {
        "ratio": round(ratio, 4),
        "at_deg": dict.fromkeys(one["coordinates"], 0.0),
        "source": "the model's own tendon slack length, arm hanging",
    }
    one["note"] += "; " + note


def compose(name: str) -> dict[str, Any]:
    """The path document of one declaration."""
    from ruamel.yaml import YAML

    document = YAML(typ="safe").load(HERE / f"{name}.yaml")
    ranges = {c["name"]: (c["low_deg"], c["high_deg"]) for c in document["coordinates"]}
    elements: list[dict[str, Any]] = []
    if name == "arm":
        joined_with_model(elements, document)
    declared = both_sides(document["elements"])
    forces(document, declared)
    elements += [element_of(one, ranges, document["sources"]) for one in declared]
    return {
        "setwright": "paths/1",
        "model": {**document.get("model", {}), "sources": list(document["sources"].values())},
        "coordinates": document["coordinates"],
        "elements": elements,
    }


def text_of(document: dict[str, Any]) -> str:
    """The document with one element a line, so that a change shows where it is."""
    lines = ",\n  ".join(json.dumps(one) for one in document["elements"])
    head = json.dumps({k: v for k, v in document.items() if k != "elements"}, indent=1)
    return head[:-2] + ',\n "elements": [\n  ' + lines + "\n ]\n}\n"


if __name__ == "__main__":
    for each in NAMES:
        (TARGET / f"{each}.json").write_text(text_of(compose(each)), encoding="utf-8")
        print(f"{each}.json written")
