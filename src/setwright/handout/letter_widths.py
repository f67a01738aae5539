"""How wide words are in DejaVu Sans, measured from its metrics."""

from __future__ import annotations

# Advance over size in hundredths, from the space to the tilde.
ASCII = (
    32, 40, 46, 84, 64, 95, 78, 27, 39, 39, 50, 84, 32, 36, 32, 34, 64, 64, 64, 64, 64, 64, 64, 64,
    64, 64, 34, 34, 84, 84, 84, 53, 100, 68, 69, 70, 77, 63, 58, 77, 75, 29, 29, 66, 56, 86, 75, 79,
    60, 79, 69, 63, 61, 73, 68, 99, 69, 61, 69, 39, 34, 39, 84, 50, 50, 61, 63, 55, 63, 62, 35, 63,
    63, 28, 28, 58, 28, 97, 63, 61, 63, 63, 41, 52, 39, 63, 59, 82, 59, 59, 52, 64, 34, 64, 84,
)  # fmt: skip
OTHER = {"–": 50, "×": 84, "…": 100, "→": 84, "−": 84}
# Letters with accents are as wide as most; those of other scripts as wide as any.
ACCENTED, ANY = 64, 100
# The bold face is this much wider over a text.
BOLD = 1.12


def measured(words: str, size: float, bold: bool = False) -> float:
    """Width of words in points.

    Args:
        words: on one line.
        size: of the type, points.
        bold: whether they are set bold.
    """
    total = sum(_width(letter) for letter in words)
    return total / 100 * size * (BOLD if bold else 1.0)


def _width(letter: str) -> int:
    place = ord(letter) - 32
    if 0 <= place < len(ASCII):
        return ASCII[place]
    return OTHER.get(letter, ACCENTED if ord(letter) < 0x250 else ANY)
