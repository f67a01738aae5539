"""Rebuild the compiled copies of the knowledge folders: ``make knowledge``."""

from __future__ import annotations

from importlib import import_module

from setwright.anatomy.atlas import AnatomyFile
from setwright.documents.base import Document
from setwright.documents.knowledge import compile_folder
from setwright.exercises.model import PatternFile

FOLDERS: tuple[tuple[str, str, type[Document]], ...] = (
    ("setwright.anatomy", "parts", AnatomyFile),
    ("setwright.exercises", "patterns", PatternFile),
)


def main() -> None:
    """Compile every folder and say where the copies lie."""
    library = import_module("setwright.sources.library")
    folders = (*FOLDERS, ("setwright.sources", "findings", library.FindingsFile))
    for package, folder, model in folders:
        path = compile_folder(package, folder, model)
        print(f"{package}/{folder}: {path.stat().st_size} bytes")


if __name__ == "__main__":
    main()
