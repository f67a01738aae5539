"""Filters and tags of every template."""

from __future__ import annotations

import hashlib
from functools import lru_cache
from pathlib import Path

from django import template
from django.contrib.staticfiles import finders
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
    """Address of a file of ours that changes when its content does."""
    return f"{static(f'setwright/{name}')}?v={_hash(f'setwright/{name}')}"


@lru_cache
def _hash(name: str) -> str:
    found = finders.find(name)
    if not isinstance(found, str):
        raise template.TemplateSyntaxError(f"no static file {name}")
    return hashlib.sha256(Path(found).read_bytes()).hexdigest()[:12]
