"""Words broken into the lines of a picture."""

from __future__ import annotations

from setwright.handout.canvas import shortened
from setwright.handout.letter_widths import measured

# Letters that may go on to the next line alone.
SHORTEST = 3


def fitted(words: str, size: float, room: float, most: int) -> list[str]:
    """Words in at most so many lines; a mark says where they were cut.

    Args:
        words: what is to be shown.
        size: of the type, points.
        room: width of a line, points.
        most: lines.
    """
    lines: list[str] = []
    for word in words.split():
        joined = f"{lines[-1]} {word}" if lines else word
        if lines and measured(joined, size) <= room:
            lines[-1] = joined
        else:
            lines += _broken(word, size, room)
    if len(lines) > most:
        lines = [*lines[: most - 1], shortened(f"{lines[most - 1]}…", room, size)]
    return lines


def _broken(word: str, size: float, room: float) -> list[str]:
    """A word wider than a line, after its hyphens where it has some, else where the line ends."""
    pieces: list[str] = []
    while measured(word, size) > room and len(word) > 1:
        end = next(n for n in range(len(word), 0, -1) if n == 1 or measured(word[:n], size) <= room)
        end = word.rfind("-", 0, end) + 1 or max(min(end, len(word) - SHORTEST), 1)
        pieces.append(word[:end])
        word = word[end:]
    return [*pieces, word] if word else pieces
