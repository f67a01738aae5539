"""The pictures of a week: where its minutes go, and what each part gets."""

from __future__ import annotations

from setwright.handout.drawing import save
from setwright.handout.parts_picture import parts_picture
from setwright.handout.week_picture import week_picture

__all__ = ["parts_picture", "save", "week_picture"]
