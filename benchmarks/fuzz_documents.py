"""Ten thousand random and mutated documents: nothing but a DocumentError, nothing invalid accepted.

Every document is either refused with a message or accepted; what is accepted must hold against its
model and its JSON Schema once more, come back the same after being written, and be audited without
an exception. Run: ``python benchmarks/fuzz_documents.py [how many] [seed]``.
"""

from __future__ import annotations

import json
import random
import sys
import time
from collections import Counter
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from typing import Any

from jsonschema import Draft202012Validator

from setwright.audit.audit import audit
from setwright.documents.errors import DocumentError
from setwright.documents.yaml_io import read_yaml
from setwright.exercises.catalogue import ids
from setwright.plan.checking import intake_clashes, plan_clashes
from setwright.plan.intake import Intake
from setwright.plan.read import is_yaml, read_any_plan, read_intake, read_plan
from setwright.plan.schema import SCHEMAS
from setwright.plan.week import Plan
from setwright.plan.write import update_plan, write_intake, write_plan

EXAMPLES = Path(__file__).parent.parent / "examples"
KINDS = ("plan", "intake", "text")
FILES = {"plan": "plan.yaml", "intake": "intake.yaml", "text": "plan.txt"}
NASTY = (
    "\t", "\0", "\x07", "\ufeff", "\ud800", "\U0001f3cb", "\u2028", "\x85", "&a ", "*a",
    "<<: *a", "!!int ", "!!python/object:os.system ", "%YAML 9.9\n", "---\n", "...\n",
    "[" * 3000, "{a: " * 400, "- " * 400, ".nan", ".inf", "-.inf", "nan", "1e999", "0o17",
    "0x1F", "017", "1_000", "1:30", "-1", "-0", "0", "0.0", "99999999999999999999999",
    "1" * 5000, "true", "no", "null", "~", "''", '"', "'", '"\\ud800"', '"\\x00"', "|", ">",
    "? ", ": ", "#", "@", "`", "{}", "[]", "[1, 2, 3]", "3 x 8", "0 x 0", "999999 x 999999",
    "8-6", "RIR 11", "RIR 0,5", "rest 0 s", "rest 99 min", "tempo 9999", "tempo X/X/X/X", "A",
    "superset Z", "superset ß", "1e9 kg", "0.1 lb", "partials", "note", "RPE 12", "to failure",
    "60 kg, 60 kg", "²", "٣ x ٨",
)  # fmt: skip


def random_text(rng: random.Random) -> str:
    """Noise: characters of all kinds, or pieces of the documents' own language in any order."""
    if rng.random() < 0.4:
        points = (rng.choice((0x80, 0x800, 0x11_0000)) for _ in range(rng.randrange(200)))
        return "".join(chr(rng.randrange(top)) for top in points)
    words = (
        "setwright: ", "plan/1", "intake/1", "\n", "\n", "\n  ", "- ", "sessions:",
        "exercises:", "Monday", "day: ", "name: ", "Back squat", ": ", "3 x 8", ", ", "RIR 2",
        "rest 2 min", *NASTY,
    )  # fmt: skip
    return "".join(rng.choice(words) for _ in range(rng.randrange(1, 60)))


def _lines(rng: random.Random, text: str) -> str:
    lines = text.split("\n")
    at, other = rng.randrange(len(lines)), rng.randrange(len(lines))
    choice = rng.randrange(5)
    if choice == 0:
        del lines[at]
    elif choice == 1:
        lines.insert(other, lines[at])
    elif choice == 2:
        lines[at], lines[other] = lines[other], lines[at]
    elif choice == 3:
        lines[at] = " " * rng.randrange(8) + lines[at].lstrip()
    else:
        lines.insert(at, rng.choice(example(rng.choice(KINDS)).split("\n")))
    return "\n".join(lines)


def _value(rng: random.Random, text: str) -> str:
    """Another value in the place of one that stands behind a colon, a comma or a space."""
    places = [at for at, char in enumerate(text) if char in " :,"]
    start = rng.choice(places) + 1 if places else 0
    end = next((at for at in range(start, len(text)) if text[at] in ",\n}"), len(text))
    return text[:start] + " " + rng.choice(NASTY) + text[end:]


def _digit(rng: random.Random, text: str) -> str:
    places = [at for at, char in enumerate(text) if char.isdigit()]
    if not places:
        return text
    at = rng.choice(places)
    return text[:at] + rng.choice("0123456789") + text[at + 1 :]


def _character(rng: random.Random, text: str) -> str:
    at = rng.randrange(len(text) + 1)
    return (
        text[:at]
        + rng.choice(("", rng.choice(NASTY), chr(rng.randrange(32, 127))))
        + text[at + 1 :]
    )


MUTATIONS: tuple[Callable[[random.Random, str], str], ...] = (_lines, _value, _digit, _character)


@cache
def example(kind: str) -> str:
    """The text of an example."""
    return (EXAMPLES / FILES[kind]).read_text(encoding="utf-8")


def documents(count: int, seed: int) -> Iterator[tuple[str, str, str]]:
    """Documents to try: their kind, how they were made, and the text."""
    rng = random.Random(seed)
    for _ in range(count):
        kind = rng.choice(KINDS)
        if rng.random() < 0.15:
            yield kind, "random", random_text(rng)
            continue
        text = example(kind)
        for _ in range(rng.choice((1, 1, 1, 2, 3, 8))):
            text = rng.choice(MUTATIONS)(rng, text)
        yield kind, "mutated", text


@cache
def _validator(name: str) -> Draft202012Validator:
    return Draft202012Validator(SCHEMAS[name]())


def check_plan(text: str, with_audit: bool) -> None:
    """Read a plan; hold what is accepted against everything it promises."""
    plan = read_any_plan(text, "plan")
    if is_yaml(text):
        _validator("plan-1.schema.json").validate(read_yaml(text, "plan").data)
    assert Plan.model_validate(plan.model_dump(), strict=True) == plan
    assert not list(plan_clashes(plan))
    assert all(entry.exercise in ids() for session in plan.sessions for entry in session.exercises)
    written = write_plan(plan)
    assert read_plan(written, "written") == plan
    assert write_plan(read_plan(written, "written")) == written
    _validator("plan-1.schema.json").validate(read_yaml(written, "written").data)
    shorter = plan.model_copy(update={"title": "changed", "sessions": plan.sessions[:1]})
    assert read_plan(update_plan(written, shorter), "updated") == shorter
    if with_audit:
        audit(plan)


def check_intake(text: str, with_audit: bool) -> None:
    """Read an intake; hold what is accepted against everything it promises."""
    intake = read_intake(text, "intake")
    _validator("intake-1.schema.json").validate(read_yaml(text, "intake").data)
    assert Intake.model_validate(intake.model_dump(), strict=True) == intake
    assert not list(intake_clashes(intake))
    written = write_intake(intake)
    assert read_intake(written, "written") == intake
    _validator("intake-1.schema.json").validate(read_yaml(written, "written").data)
    if with_audit:
        audit(read_plan(example("plan"), "plan"), intake)


def outcome(kind: str, text: str, with_audit: bool) -> str:
    """What became of a document: ``accepted`` or ``refused``; anything else is an exception."""
    try:
        if kind == "intake":
            check_intake(text, with_audit)
        else:
            check_plan(text, with_audit)
    except DocumentError as error:
        assert all(fault.found and fault.allowed for fault in error.faults)
        str(error)
        return "refused"
    return "accepted"


def run(
    count: int, seed: int, with_audit: bool = True
) -> tuple[Counter[Any], list[tuple[str, str]]]:
    """Try documents; give the counts, and the failures with their texts."""
    counts: Counter[Any] = Counter()
    failures: list[tuple[str, str]] = []
    for kind, made, text in documents(count, seed):
        try:
            result = outcome(kind, text, with_audit)
        except Exception as error:
            result = "failed"
            failures.append((f"{kind}: {type(error).__name__}: {error}"[:500], text))
        counts[kind, made, result] += 1
    return counts, failures


def main() -> int:
    """Run and print the counts."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    started = time.perf_counter()
    counts, failures = run(count, seed)
    print(f"{count} documents, seed {seed}, {time.perf_counter() - started:.0f} s")
    print(f"{'kind':8}{'made':10}{'accepted':>10}{'refused':>10}{'failed':>8}")
    for kind in KINDS:
        for made in ("random", "mutated"):
            row = [counts[kind, made, result] for result in ("accepted", "refused", "failed")]
            print(f"{kind:8}{made:10}{row[0]:>10}{row[1]:>10}{row[2]:>8}")
    for message, text in failures[:5]:
        print(message, json.dumps(text)[:2000], sep="\n")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
