"""A design in a process of its own: the order on standard input, lines of JSON on standard output.

Ends at once when whoever started it closes its input or goes away. Run as a module.
"""

from __future__ import annotations

import json
import os
import sys
import threading

from setwright.documents.errors import DocumentError

# The server's own requests come first on a small machine.
NICE = 10


def main() -> None:
    """Read one line of JSON (``intake``, ``keep``, ``seconds``), design, tell."""
    order = json.loads(sys.stdin.readline())
    threading.Thread(target=_end_with_parent, daemon=True).start()
    os.nice(NICE)
    try:
        _tell(**_designed(order["intake"], order["keep"], order["seconds"]))
    except DocumentError as error:
        _tell(
            fault="; ".join(
                f"{fault.field or error.name}: found {fault.found}; allowed: {fault.allowed}"
                for fault in error.faults
            )
        )


def _designed(intake: str, keep: str, seconds: float) -> dict[str, object]:
    from setwright.design.design import design
    from setwright.handout.design_text import design_text
    from setwright.plan.read import read_intake, read_plan
    from setwright.plan.write import write_plan

    kept = read_plan(keep, "what is locked") if keep else None
    person = read_intake(intake, "intake")
    found = design(person, seconds, lambda words: _tell(say=words), keep=kept)
    return {"plan": write_plan(found.plan), "words": design_text(found)}


def _tell(**what: object) -> None:
    sys.stdout.write(json.dumps(what) + "\n")
    sys.stdout.flush()


def _end_with_parent() -> None:
    while sys.stdin.readline():
        pass
    os._exit(0)


if __name__ == "__main__":
    main()
