"""Rebuild the compiled copies of the knowledge folders: ``make knowledge``."""

from __future__ import annotations

from setwright.anatomy.atlas import AnatomyFile
from setwright.documents.base import Document
from setwright.documents.knowledge import compile_folder
from setwright.exercises.comparisons import ComparisonFile
from setwright.exercises.model import PatternFile
from setwright.exercises.movements import MovementFile
from setwright.sources.library import FindingsFile

FOLDERS: tuple[tuple[str, str, type[Document]], ...] = (
    ("setwright.anatomy", "parts", AnatomyFile),
    ("setwright.exercises", "comparisons", ComparisonFile),
    ("setwright.exercises", "movements", MovementFile),
    ("setwright.exercises", "patterns", PatternFile),
    ("setwright.sources", "findings", FindingsFile),
)


def main() -> None:
    """Compile every folder and say where the copies lie."""
    for package, folder, model in FOLDERS:
        path = compile_folder(package, folder, model)
        print(f"{package}/{folder}: {path.stat().st_size} bytes")


if __name__ == "__main__":
    main()
