"""Pieces of the board that are rendered once and kept, for most stay the same from edit to edit."""

from __future__ import annotations

from django import template
from django.template.loader import render_to_string
from django.utils.safestring import SafeString

from setwright.web.board.columns import Column
from setwright.web.board.dose import MuscleRows
from setwright.web.memory import held

register = template.Library()


@register.simple_tag
def day_html(column: Column, height: str, current: str) -> SafeString:
    """A day of the board; ``current`` is the place that is looked at, in whatever day it is."""
    here = current if current and current.startswith(f"{column.number}.") else ""
    return _day(column, height, here)


@register.simple_tag
@held(2048)
def muscle_html(muscle: MuscleRows) -> SafeString:
    """A muscle of the dose table with its parts."""
    return render_to_string("board/muscle.html", {"muscle": muscle})


@held(1024)
def _day(column: Column, height: str, current: str) -> SafeString:
    context = {"day": column, "height": height, "current": current}
    return render_to_string("board/day.html", context)
