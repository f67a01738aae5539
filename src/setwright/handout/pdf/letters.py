"""Letters that the page's own fonts lack: set from a font of the machine, or said in words."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Collection, Iterator
from typing import Any

from setwright.handout.writable_text import writable

# Every letter up to here is in DejaVu, and so are the signs that our own texts use.
PLAIN_UNTIL = "\u024f"
SIGNS = frozenset("–—‘’“”…•→−≤≥")
MARK = "[?]"
# They only change how the sign before them looks on a screen: variations and tones of skin.
LOOKS = re.compile("[\ufe00-\ufe0f\U0001f3fb-\U0001f3ff]")
JOINER = "\u200d"
SYMBOL = "So"
FLAG = "regional indicator symbol letter "


def uncommon(value: Any) -> frozenset[str]:
    """Letters of texts, also of those within lists and mappings, that a font may lack."""
    return frozenset(
        letter
        for words in _texts(value)
        for letter in LOOKS.sub("", writable(words))
        if letter > PLAIN_UNTIL and letter not in SIGNS and letter != JOINER
    )


def spelled(words: str, lacking: Collection[str]) -> str:
    """The words as a font can show them: a symbol by its name, other letters by a mark.

    Args:
        words: as they were written.
        lacking: letters that no font has.

    >>> spelled("Mia 💪🏽", {"💪"})
    'Mia [flexed biceps]'
    >>> spelled("王小明", {"王", "小", "明"})
    '[?]'
    """
    shown = LOOKS.sub("", words)
    if not lacking:
        return shown
    those = re.escape("".join(lacking))
    return re.sub(f"[{those}][{those}{JOINER}]*", lambda found: _said(found[0]), shown)


def marked(lacking: Collection[str]) -> list[str]:
    """Those among the letters that are shown as a mark, in order."""
    return sorted(letter for letter in lacking if unicodedata.category(letter) != SYMBOL)


def _said(run: str) -> str:
    pieces: list[str] = []
    for letter in run:
        if unicodedata.category(letter) == SYMBOL:
            name = unicodedata.name(letter, "symbol").lower()
            pieces.append(f"[{name.removeprefix(FLAG)}]")
        elif letter != JOINER and pieces[-1:] != [MARK]:
            pieces.append(MARK)
    return " ".join(pieces)


def _texts(value: Any) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for item in value.values():
            yield from _texts(item)
    elif isinstance(value, list | tuple):
        for item in value:
            yield from _texts(item)
