"""The picture of the week as a page has it: words of one size, none over another."""

from __future__ import annotations

import itertools

import pytest
from matplotlib import rc_context

from setwright.audit.audit import audit
from setwright.handout.drawing import STYLE
from setwright.handout.pdf.week_pages import HIGH_IN, PAGE_IN, week_pages
from setwright.handout.week_picture import week_picture
from setwright.plan.week import Plan
from setwright.rehearsal.model import Rehearsal


@pytest.mark.parametrize("days", [(0, 1), (2, 3), (4, 5)])
def test_no_words_leave_the_picture_or_cover_others(hard: Plan, days: tuple[int, int]) -> None:
    lived = audit(hard).rehearsal
    plan = hard.model_copy(update={"sessions": tuple(hard.sessions[n] for n in days)})
    rehearsal = Rehearsal(tuple(lived.sessions[n] for n in days))
    with rc_context(STYLE):  # type: ignore[arg-type]
        figure = week_picture(plan, rehearsal, width_in=PAGE_IN, height_in=HIGH_IN)
        figure.draw_without_rendering()
    assert figure.get_figheight() <= HIGH_IN + 1e-6
    words = [*figure.texts, *figure.axes[0].texts]
    boxes = [(one.get_window_extent(), one.get_text()) for one in words if one.get_text()]
    assert len(boxes) > 40
    for box, said in boxes:
        assert box.x0 >= 0 and box.x1 <= figure.bbox.x1, said
        assert box.y0 >= 0 and box.y1 <= figure.bbox.y1, said
    for (one, said), (other, beside) in itertools.combinations(boxes, 2):
        across = min(one.x1, other.x1) - max(one.x0, other.x0)
        down = min(one.y1, other.y1) - max(one.y0, other.y0)
        # Line boxes stand closer than the letters in them.
        assert across <= 1 or down <= 0.25 * min(one.height, other.height), (said, beside)


def test_a_page_holds_few_days(plan: Plan, hard: Plan) -> None:
    assert len(week_pages(plan, audit(plan).rehearsal)) == 1
    assert len(week_pages(hard, audit(hard).rehearsal)) == 3
