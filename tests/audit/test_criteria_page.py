from __future__ import annotations

import runpy
from pathlib import Path

ROOT = Path(__file__).parents[2]


def test_the_page_lists_every_criterion() -> None:
    script = runpy.run_path(str(ROOT / "scripts" / "write_criteria.py"))
    text = (ROOT / "docs" / "audit.md").read_text(encoding="utf-8")
    assert script["page"](text) == text, "run scripts/write_criteria.py"
