"""Text that every file format can hold."""

from __future__ import annotations

import re

# Neither XML nor HTML nor iCalendar knows these: control characters other than the tab and the end
# of a line, halves of characters, and the two that are no characters.
NOWHERE = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")


def writable(words: str) -> str:
    r"""Words with a space in place of what no file can hold.

    >>> writable("a\x07b\nc")
    'a b\nc'
    """
    return NOWHERE.sub(" ", words)
