from __future__ import annotations

from xml.etree import ElementTree

from setwright.audit.audit import audit
from setwright.handout.pdf.week_pages import HEIGHT, WIDTH, week_pages
from setwright.plan.week import Plan


def test_a_page_holds_few_days(plan: Plan, hard: Plan) -> None:
    assert len(week_pages(plan, audit(plan).rehearsal)) == 1
    pages = week_pages(hard, audit(hard).rehearsal)
    assert len(pages) == 3
    for one in pages:
        _, _, width, height = map(float, ElementTree.fromstring(one).attrib["viewBox"].split())
        assert width == WIDTH and height <= HEIGHT
