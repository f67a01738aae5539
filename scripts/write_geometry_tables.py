"""Writes the error tables of docs/geometry.md from the path figures.

A table stands between ``<!-- table: leg -->`` and ``<!-- end of table -->``; the word is the name
of the file of figures.
"""

from __future__ import annotations

import re
from pathlib import Path

from setwright.mechanics.paths import load

PAGE = Path(__file__).parent.parent / "docs/geometry.md"
TABLE = re.compile(r"(<!-- table: ([\w-]+) -->\n).*?(<!-- end of table -->)", re.DOTALL)
HEAD = (
    "| element | part | depends on | terms | length rms, mm | at most, mm | arms rms, mm |\n"
    "|---|---|---|---|---|---|---|\n"
)


def error(mm: float | None) -> str:
    """An error in a cell; a declared path has none."""
    return "" if mm is None else f"{round(mm, 2):g}"


def table(name: str) -> str:
    """The table of one file."""
    rows = [
        f"| {one.element} | {one.part or '-'} | {', '.join(one.coordinates)} | {len(one.powers)}"
        f" | {error(one.rms_mm)} | {error(one.max_mm)} | {error(one.arm_rms_mm)} |\n"
        for one in load(name).elements
    ]
    return HEAD + "".join(rows)


def main() -> None:
    """Fills every table of the page."""
    text = PAGE.read_text("utf-8")
    PAGE.write_text(TABLE.sub(lambda m: m[1] + table(m[2]) + m[3], text), encoding="utf-8")


if __name__ == "__main__":
    main()
