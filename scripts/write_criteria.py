"""Write the table of criteria in docs/audit.md from the registry, so that it cannot lag behind.

Run: python scripts/write_criteria.py
"""

from __future__ import annotations

from pathlib import Path

from setwright.audit.registry import registry

PAGE = Path(__file__).parents[1] / "docs" / "audit.md"
START, END = "<!-- criteria: start -->", "<!-- criteria: end -->"


def table() -> str:
    """The criteria as a Markdown table."""
    rows = [
        f"| `{one.id}` | {one.title} | {', '.join(f'`{source}`' for source in one.evidence)} |"
        for one in registry()
    ]
    return "\n".join(["| criterion | it asks that | evidence |", "|---|---|---|", *rows])


def page(text: str) -> str:
    """The page with its table renewed."""
    before, _, rest = text.partition(START)
    _, _, after = rest.partition(END)
    return f"{before}{START}\n{table()}\n{END}{after}"


if __name__ == "__main__":
    PAGE.write_text(page(PAGE.read_text(encoding="utf-8")), encoding="utf-8")
