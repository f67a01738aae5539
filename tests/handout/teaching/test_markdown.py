"""The document as Markdown, read back by a parser that others wrote."""

from __future__ import annotations

import re

from hypothesis import example, given, settings
from hypothesis import strategies as st
from markdown_it import MarkdownIt
from markdown_it.token import Token

from setwright.handout.teaching.content import Picture, Ruling, Teaching
from setwright.handout.teaching.markdown import escaped, markdown
from setwright.plan.week import Plan

PARSER = MarkdownIt("commonmark").enable("table")


def flat(text: str) -> list[Token]:
    found: list[Token] = []
    for token in PARSER.parse(text):
        found.append(token)
        found += token.children or []
    return found


def said(tokens: list[Token]) -> str:
    return "".join(one.content for one in tokens if one.type in ("text", "text_special"))


@settings(derandomize=True, max_examples=300)
@given(st.text(st.characters(codec="utf-8", exclude_categories=["Cc", "Cs"]), max_size=60))
@example("- item")
@example("12) item")
@example("1.5 min")
@example("=== heading")
@example("<b>&amp;</b> [l](u) ![p](u) `c` *e* _e_ ~~s~~ # h | cell \\")
@example("https://x.test www.x.test <https://x.test>")
def test_escaped_text_is_text(text: str) -> None:
    tokens = flat(escaped(text))
    assert {one.type for one in tokens} <= {
        "paragraph_open", "inline", "text", "text_special", "paragraph_close",
    }  # fmt: skip
    assert said(tokens) == " ".join(text.split())


def test_hostile_words_are_never_markup(hard: Plan, hard_full: Teaching) -> None:
    tokens = flat(markdown(hard_full, {}))
    assert not [one for one in tokens if one.type in ("html_block", "html_inline", "code_inline")]
    assert not [one for one in tokens if one.type in ("image", "fence", "code_block")]
    links = [one.attrs["href"] for one in tokens if one.type == "link_open"]
    assert links and all(str(one).startswith("https://doi.org/10.") for one in links)
    title = next(one for at, one in enumerate(tokens) if tokens[at - 1].type == "heading_open")
    assert said(title.children or []) == " ".join(hard.title.split())


def test_every_section_criterion_and_source_is_there(full: Teaching) -> None:
    text = markdown(full, {})
    tokens = PARSER.parse(text)
    heads = [
        said(tokens[at + 1].children or [])
        for at, one in enumerate(tokens)
        if one.type == "heading_open"
    ]
    for section in full.sections:
        assert section.title in heads
        for block in section.blocks:
            if isinstance(block, Ruling):
                assert f"{block.title}: {block.standing}" in heads
    for one in full.sources:
        assert re.search(rf"^{one.number}\. ", text, re.MULTILINE)


def test_pictures_are_linked_or_told_in_words(full: Teaching) -> None:
    pictures = [
        block for section in full.sections for block in section.blocks if isinstance(block, Picture)
    ]
    linked = flat(markdown(full, {one.name: f"week-{one.name}.svg" for one in pictures}))
    sources = [one.attrs["src"] for one in linked if one.type == "image"]
    assert sources == [f"week-{one.name}.svg" for one in pictures]
    told = said(flat(markdown(full, {})))
    assert all(" ".join(one.alt.split()) in told for one in pictures)


def test_tables_stay_tables(hard_full: Teaching) -> None:
    tokens = PARSER.parse(markdown(hard_full, {}))
    rows: list[int] = []
    widths: list[set[int]] = []
    for one in tokens:
        if one.type == "table_open":
            widths.append(set())
        elif one.type == "tr_open":
            rows.append(0)
        elif one.type in ("td_open", "th_open"):
            rows[-1] += 1
        elif one.type == "tr_close":
            widths[-1].add(rows[-1])
    assert len(widths) > 8
    assert all(len(one) == 1 for one in widths)
