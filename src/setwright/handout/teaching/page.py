"""The teaching document as one web page that needs no network."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from setwright.handout.page.build import POLICY
from setwright.handout.page.build import STYLE as SHARED
from setwright.handout.page.tags import Html, joined, tag, void
from setwright.handout.teaching.content import Section, Source, Teaching
from setwright.handout.teaching.page_blocks import block_html

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
                    *(block_html(block, numbers) for block in one.blocks),
                )
            )
            for one in chapter
        ),
        aria_labelledby=chapter[0].ident,
    )


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
