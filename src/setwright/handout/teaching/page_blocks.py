"""The blocks of a teaching document as HTML."""

from __future__ import annotations

from collections.abc import Mapping

from setwright.handout.page.tags import Html, joined, tag
from setwright.handout.teaching.content import (
    Block,
    Found,
    Picture,
    Points,
    Ruling,
    Table,
    Words,
)


def block_html(block: Block, numbers: Mapping[str, int]) -> Html:
    """One block.

    Args:
        block: what it says.
        numbers: id of a finding to its number in the list of sources.
    """
    if isinstance(block, Words):
        return tag("p", _words(block, numbers))
    if isinstance(block, Points):
        items = tag("ul", *(tag("li", _words(item, numbers)) for item in block.items))
        if not block.caption:
            return items
        return joined((tag("p", tag("strong", block.caption), class_="list-head"), items))
    if isinstance(block, Table):
        return _table(block)
    if isinstance(block, Picture):
        return _picture(block)
    return _ruling(block, numbers)


def _words(words: Words, numbers: Mapping[str, int]) -> Html:
    return joined((words.text, _marks(words.sources, numbers)))


def _marks(idents: tuple[str, ...], numbers: Mapping[str, int]) -> Html:
    given = [numbers[ident] for ident in idents if ident in numbers]
    links: list[str] = []
    for number in given:
        links += [", " if links else " [", tag("a", str(number), href=f"#source-{number}")]
    return tag("span", *links, "]", class_="marks") if links else Html("")


def _table(table: Table) -> Html:
    def cell(at: int, words: str) -> Html:
        inside = tag("strong", words) if words in table.stressed else words
        if at == 0:
            return tag("th", inside, scope="row", dir="auto")
        return tag("td", inside, class_="figure" if at in table.figures else None, dir="auto")

    label = table.caption or ", ".join(filter(None, table.heads))
    return tag(
        "div",
        tag(
            "table",
            tag("caption", tag("span", table.caption)) if table.caption else Html(""),
            tag(
                "thead",
                tag("tr", *(tag("th", one or tag("span", "place", class_="unseen"), scope="col")
                            for one in table.heads)),
            ),
            tag("tbody", *(tag("tr", *(cell(at, words) for at, words in enumerate(row)))
                           for row in table.rows)),
        ),
        class_="wide",
        tabindex="0",
        role="group",
        aria_label=label,
    )  # fmt: skip


def _picture(picture: Picture) -> Html:
    opening = tag("svg", role="img", aria_label=picture.alt).removesuffix("></svg>")
    drawn = Html(picture.svg.replace("<svg", opening, 1))
    return tag(
        "figure",
        tag("div", drawn, class_="wide", tabindex="0", role="group", aria_label=picture.caption),
        tag("figcaption", picture.caption),
    )


def _ruling(one: Ruling, numbers: Mapping[str, int]) -> Html:
    held = tag("ul", *(tag("li", it) for it in one.held), class_="held") if one.held else Html("")
    found = tag("ul", *(tag("li", _found(it)) for it in one.found)) if one.found else Html("")
    shown = (
        tag("ul", *(tag("li", _words(it, numbers)) for it in one.shown), class_="held")
        if one.shown
        else Html("")
    )
    name = f"criterion-{one.criterion}"
    return tag(
        "article",
        tag("h4", one.title, id=name),
        tag("p", tag("strong", one.standing), f" · {one.counts}", class_=f"standing {_kind(one)}"),
        tag(
            "dl",
            tag("dt", "What it asks"),
            tag("dd", one.means),
            tag("dt", "Why it matters"),
            tag("dd", one.matters),
            class_="words",
        ),
        found,
        held,
        tag(
            "dl",
            tag("dt", f"Evidence: {one.strength}"),
            tag("dd", one.weighed, _marks(one.sources, numbers), f". {one.thin}", shown),
            class_="words",
        ),
        class_="ruling",
        aria_labelledby=name,
    )


def _kind(one: Ruling) -> str:
    return one.standing.replace(" ", "-")


def _found(one: Found) -> Html:
    mend = f" {one.mend}" if one.mend else ""
    declared = f" Declared unavoidable: {one.declared}." if one.declared else ""
    return joined((tag("em", f"{one.verdict}: "), one.words, mend, declared))
