"""Every lesson, by criterion."""

from __future__ import annotations

from collections.abc import Mapping

from setwright.handout.teaching.lesson import Lesson
from setwright.handout.teaching.lessons_dose import DOSE
from setwright.handout.teaching.lessons_effort import EFFORT
from setwright.handout.teaching.lessons_exercise import EXERCISES
from setwright.handout.teaching.lessons_person import PERSON
from setwright.handout.teaching.lessons_session import SESSION

LESSONS: Mapping[str, Lesson] = {**DOSE, **EXERCISES, **EFFORT, **SESSION, **PERSON}
