"""Where the fonts of the printed handout are: DejaVu as it comes with matplotlib, Typst's own."""

from __future__ import annotations

from functools import cache
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from typst import Fonts

# Debian's package fonts-dejavu-core, for an installation of matplotlib without its fonts.
DEBIAN = Path("/usr/share/fonts/truetype/dejavu")


def folder() -> Path | None:
    """The folder with the DejaVu fonts, or None; Typst's own serif is used then."""
    spec = find_spec("matplotlib")
    for place in (spec.submodule_search_locations or ()) if spec else ():
        found = Path(place) / "mpl-data" / "fonts" / "ttf"
        if (found / "DejaVuSans.ttf").is_file():
            return found
    return DEBIAN if (DEBIAN / "DejaVuSans.ttf").is_file() else None


@cache
def fonts() -> Fonts:
    """Those fonts and no others, so that every machine sets the same page."""
    import typst

    place = folder()
    return typst.Fonts(
        include_system_fonts=False,
        include_embedded_fonts=True,
        font_paths=[str(place)] if place else [],
    )
