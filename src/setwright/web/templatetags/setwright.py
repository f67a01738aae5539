"""Filters and tags of every template."""

from __future__ import annotations

from django import template
from django.templatetags.static import static

register = template.Library()


@register.filter
def plain(value: float, places: int = 1) -> str:
    """A figure without needless zeros: 2, 2.5."""
    text = f"{value:.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


@register.filter
def signed(value: float, places: int = 1) -> str:
    """A change with its sign: +2.5, -1, 0."""
    text = f"{value:+.{places}f}"
    return "0" if float(text) == 0 else text.rstrip("0").rstrip(".") if "." in text else text


@register.simple_tag
def asset(name: str) -> str:
    """Address of a file of ours; it changes when any of them does."""
    return static(f"setwright/{name}")
