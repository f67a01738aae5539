"""HTML written by functions that escape every text they are given."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape

from setwright.handout.writable_text import writable


class Html(str):
    """Markup that is safe to put into a page as it is."""

    __slots__ = ()


def tag(name: str, /, *inside: str, **attributes: str | None) -> Html:
    """An element; text inside is escaped, markup made here is not.

    Args:
        name: of the element.
        inside: what it holds, in order.
        attributes: a trailing underscore is dropped and others become hyphens; None leaves the
            attribute out.
    """
    said = "".join(
        f' {key.rstrip("_").replace("_", "-")}="{escape(writable(value), quote=True)}"'
        for key, value in attributes.items()
        if value is not None
    )
    return Html(f"<{name}{said}>{joined(inside)}</{name}>")


def void(name: str, /, **attributes: str) -> Html:
    """An element that holds nothing, such as ``img``."""
    said = "".join(
        f' {key.rstrip("_").replace("_", "-")}="{escape(writable(value), quote=True)}"'
        for key, value in attributes.items()
    )
    return Html(f"<{name}{said}>")


def joined(pieces: Iterable[str]) -> Html:
    """Pieces one after the other, plain text among them escaped."""
    return Html("".join(one if isinstance(one, Html) else escape(writable(one)) for one in pieces))
