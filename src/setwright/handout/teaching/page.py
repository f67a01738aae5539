"""The teaching document as one web page that needs no network."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from setwright.handout.page.build import POLICY
from setwright.handout.page.build import STYLE as SHARED
from setwright.handout.page.tags import Html, joined, tag, void
from setwright.handout.teaching.content import (
    Block,
    Found,
    Picture,
    Points,
    Ruling,
    Section,
    Source,
    Table,
    Teaching,
    Words,
)

STYLE = Path(__file__).parent / "teaching.css"


def page(document: Teaching) -> str:
    """One self-contained HTML document.

    Args:
        document: what it says.
    """
    numbers = {one.ident: one.number for one in document.sources}
    places = [(one.ident, one.title) for one in document.sections if one.level == 2]
    sources = _sources(document.sources) if document.sources else Html("")
    if document.sources:
        places.append(("sources", "Sources"))
    body = tag(
        "body",
        tag("a", "Skip to the text", href="#text", class_="skip"),
        tag(
            "header",
            tag("h1", document.title, dir="auto"),
            tag("p", document.subtitle, class_="soft", dir="auto"),
        ),
        tag(
            "nav",
            tag("ul", *(tag("li", tag("a", said, href=f"#{at}")) for at, said in places)),
            aria_label="Contents",
        ),
        tag(
            "main",
            *(_chapter(chapter, numbers) for chapter in _chapters(document.sections)),
            sources,
            id="text",
        ),
        tag("footer", tag("p", document.notice)),
    )
    style = SHARED.read_text(encoding="utf-8") + STYLE.read_text(encoding="utf-8")
    head = tag(
        "head",
        void("meta", charset="utf-8"),
        void("meta", http_equiv="Content-Security-Policy", content=POLICY),
        void("meta", name="viewport", content="width=device-width, initial-scale=1"),
        tag("title", document.title),
        tag("style", Html(style)),
    )
    return f"<!DOCTYPE html>\n{tag('html', head, body, lang='en')}\n"


def _chapters(sections: tuple[Section, ...]) -> list[list[Section]]:
    """Sections of level 2, each with those of level 3 that follow it."""
    found: list[list[Section]] = []
    for section in sections:
        if section.level == 2 or not found:
            found.append([])
        found[-1].append(section)
    return found


def _chapter(chapter: list[Section], numbers: Mapping[str, int]) -> Html:
    return tag(
        "section",
        *(
            joined(
                (
                    tag(f"h{one.level}", one.title, id=one.ident, dir="auto"),
                    *(_block(block, numbers) for block in one.blocks),
                )
            )
            for one in chapter
        ),
        aria_labelledby=chapter[0].ident,
    )


def _block(block: Block, numbers: Mapping[str, int]) -> Html:
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


def _sources(sources: tuple[Source, ...]) -> Html:
    return tag(
        "section",
        tag("h2", "Sources", id="sources"),
        tag("ol", *(_source(one) for one in sources), class_="sources"),
        aria_labelledby="sources",
    )


def _source(one: Source) -> Html:
    cited = tag("cite", f" {one.cited}.") if one.cited else Html("")
    doi = (
        joined((" ", tag("a", f"doi {one.doi}", href=f"https://doi.org/{one.doi}"), "."))
        if one.doi
        else Html("")
    )
    kind = tag("span", f" {one.kind}.", class_="soft")
    return tag("li", one.finding, cited, doi, kind, id=f"source-{one.number}")
