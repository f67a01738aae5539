"""A teaching document as a file, or on its way to standard output."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import Literal
from urllib.parse import quote

from setwright.documents.whole_file import write_bytes
from setwright.handout.pdf.render import Paper
from setwright.handout.teaching.content import Picture, Teaching

Format = Literal["md", "html", "pdf"]


def rendered(document: Teaching, kind: Format, paper: Paper, moment: datetime) -> bytes:
    """The document as one file; Markdown tells its pictures in words.

    Args:
        document: what it says.
        kind: of the file.
        paper: size of the sheet of a PDF.
        moment: date of a PDF.
    """
    if kind == "pdf":
        from setwright.handout.teaching.pdf import pdf

        return pdf(document, paper, moment)
    if kind == "html":
        from setwright.handout.teaching.page import page

        return page(document).encode("utf-8")
    from setwright.handout.teaching.markdown import markdown

    return markdown(document, {}).encode("utf-8")


def write(
    document: Teaching, kind: Format, paper: Paper, moment: datetime, path: Path
) -> tuple[Path, ...]:
    """Write the document; the pictures of a Markdown text stand beside it as SVG.

    Args:
        document: what it says.
        kind: of the file.
        paper: size of the sheet of a PDF.
        moment: date of a PDF.
        path: of the file; its folder must be there.

    Returns:
        The files written, the document last.

    Raises:
        DocumentError: when a file cannot be written.
    """
    if kind != "md":
        write_bytes(path, rendered(document, kind, paper, moment))
        return (path,)
    from setwright.handout.teaching.markdown import markdown

    written, places = [], {}
    for section in document.sections:
        for block in section.blocks:
            if isinstance(block, Picture):
                beside = path.with_name(f"{path.stem}-{block.name}.svg")
                write_bytes(beside, block.svg.encode("utf-8"))
                written.append(beside)
                places[block.name] = quote(beside.name)
    write_bytes(path, markdown(document, places).encode("utf-8"))
    return (*written, path)
