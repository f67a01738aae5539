"""Design the weeks of the workspace's demo anew; the result is committed, so that it opens fast."""

from __future__ import annotations

from pathlib import Path

from setwright.design.design import design
from setwright.documents.yaml_io import write_text
from setwright.plan.read import read_intake
from setwright.plan.write import write_plan

PEOPLE = Path("src/setwright/web/demo/people")


def main() -> None:
    """Write a week beside every intake."""
    for file in sorted(PEOPLE.glob("*.yaml")):
        if not file.stem.endswith("-week"):
            found = design(read_intake(file.read_text(encoding="utf-8"), str(file)), seconds=20)
            write_text(file.with_name(f"{file.stem}-week.yaml"), write_plan(found.plan))
            print(file.stem, flush=True)


if __name__ == "__main__":
    main()
