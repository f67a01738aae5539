"""A picture of the drawing board as a file."""

from __future__ import annotations

from pathlib import Path

from setwright.documents.errors import DocumentError, Fault
from setwright.documents.whole_file import write_bytes

DOTS_PER_INCH = 150
SHEET = """#set page(width: auto, height: auto, margin: 0pt, fill: white)
#image(bytes(sys.inputs.svg), format: "svg")
"""


def save_svg(svg: str, path: Path) -> None:
    """Write a picture whole or not at all; the suffix, .svg or .png, says how.

    The same picture gives the same bytes.

    Raises:
        DocumentError: when the suffix is another one or the file cannot be written.
    """
    kind = path.suffix.lower()
    if kind == ".svg":
        write_bytes(path, svg.encode("utf-8"))
    elif kind == ".png":
        write_bytes(path, png(svg))
    else:
        raise DocumentError(str(path), (Fault("", kind or "no suffix", ".svg or .png"),))


def png(svg: str) -> bytes:
    """A picture as PNG on white, with the fonts of the printed documents."""
    import typst

    from setwright.handout.pdf.fonts import fonts

    made = typst.compile(
        SHEET.encode(), format="png", ppi=DOTS_PER_INCH, font_paths=fonts(), sys_inputs={"svg": svg}
    )
    assert isinstance(made, bytes)  # one page, no output path: bytes
    return made
