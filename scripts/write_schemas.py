"""Writes the JSON Schemas that ship for editors. `make schemas`; a test checks they are fresh."""

from __future__ import annotations

from pathlib import Path

import setwright.plan
from setwright.documents.yaml_io import write_text
from setwright.plan.schema import SCHEMAS, schema_text

FOLDER = Path(setwright.plan.__file__).parent / "schema"


def main() -> None:
    """Write every schema."""
    FOLDER.mkdir(exist_ok=True)
    for name in SCHEMAS:
        write_text(FOLDER / name, schema_text(name))
        print(f"{name} written")


if __name__ == "__main__":
    main()
