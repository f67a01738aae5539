"""Where the fonts of the printed handout are: DejaVu as it comes with matplotlib, Typst's own.

A font of the machine is used for letters that DejaVu lacks, and only then, so that every machine
sets the same page from the same letters as far as it can.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING
from unicodedata import category

from setwright.handout.pdf.letters import SYMBOL

if TYPE_CHECKING:
    from typst import Fonts

# Debian's package fonts-dejavu-core, for an installation of matplotlib without its fonts.
DEBIAN = Path("/usr/share/fonts/truetype/dejavu")
OWN = ("DejaVu Sans", "Libertinus Serif")
OWN_FILES = ("DejaVuSans.ttf", "DejaVuSans-Bold.ttf")
# A font that has a box for every letter there is has none of them.
LAST_RESORT = "Last Resort"
REGULAR = 400


@dataclass(frozen=True)
class Faces:
    """Fonts that show certain letters.

    Attributes:
        families: in the order they are tried, our own first.
        lacking: letters that none of them has.
    """

    families: tuple[str, ...]
    lacking: frozenset[str]


def folder() -> Path | None:
    """The folder with the DejaVu fonts, or None; Typst's own serif is used then."""
    spec = find_spec("matplotlib")
    for place in (spec.submodule_search_locations or ()) if spec else ():
        found = Path(place) / "mpl-data" / "fonts" / "ttf"
        if (found / "DejaVuSans.ttf").is_file():
            return found
    return DEBIAN if (DEBIAN / "DejaVuSans.ttf").is_file() else None


@cache
def fonts(of_the_machine: bool = False) -> Fonts:
    """Our own fonts, and those of the machine only when they are asked for."""
    import typst

    place = folder()
    return typst.Fonts(
        include_system_fonts=of_the_machine,
        include_embedded_fonts=True,
        font_paths=[str(place)] if place else [],
    )


@cache
def own_letters() -> frozenset[str]:
    """Letters that our own face has, regular and bold."""
    place = folder()
    if place is None:
        return frozenset()
    regular, bold = (has(str(place / name), 0) for name in OWN_FILES)
    return regular & bold


@cache
def faces(letters: frozenset[str]) -> Faces:
    """Fonts for letters beyond the plain ones.

    Args:
        letters: those in question, from ``letters.uncommon``.
    """
    lacking = set(letters - own_letters()) if letters else set()
    families: list[str] = []
    # Symbols are said in words: a machine's pictures for them are made for screens, in colour.
    sought = {letter for letter in lacking if category(letter) != SYMBOL}
    for family, path, index in machine() if sought else ():
        found = sought & has(path, index)
        if found:
            families.append(family)
            sought, lacking = sought - found, lacking - found
        if not sought:
            break
    return Faces((*OWN, *families), frozenset(lacking))


def machine() -> list[tuple[str, str, int]]:
    """A font of each family of this machine: family, file, place in it; plain faces first."""
    faces_ = sorted(
        (
            (abs(one.weight - REGULAR), one.style != "normal", "Sans" not in one.family, one.family,
             one.path, one.index)
            for one in fonts(of_the_machine=True).fonts()
            if one.path and not one.family.startswith((LAST_RESORT, "DejaVu Sans"))
        ),
    )  # fmt: skip
    first: dict[str, tuple[str, str, int]] = {}
    for *_, family, path, index in faces_:
        first.setdefault(family, (family, path, index))
    return list(first.values())


@cache
def has(path: str, index: int) -> frozenset[str]:
    """Letters of a font file; none when it cannot be read."""
    from fontTools.ttLib import TTFont, TTLibError

    try:
        with TTFont(path, fontNumber=index, lazy=True) as font:
            return frozenset(map(chr, font.getBestCmap() or ()))
    except (OSError, TTLibError):
        return frozenset()
