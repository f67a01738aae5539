from __future__ import annotations

import dataclasses
import itertools
import re
from html.parser import HTMLParser

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.handout.content.model import Content
from setwright.handout.page.build import STYLE, page
from setwright.handout.writable_text import NOWHERE

VOID = {"meta", "img", "br"}


class Tree(HTMLParser):
    """Elements in order with their attributes and what they say; unbalanced tags are an error."""

    def __init__(self, text: str) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[tuple[str, dict[str, str], list[str]]] = []
        self.found: list[tuple[str, dict[str, str], list[str]]] = []
        self.feed(text)
        self.close()
        assert not self.open

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        element = (tag, {key: value or "" for key, value in attrs}, [])
        self.found.append(element)
        if tag not in VOID:
            self.open.append(element)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop()[0] == tag

    def handle_data(self, data: str) -> None:
        for _, _, said in self.open:
            said.append(data)

    def all(self, tag: str) -> list[tuple[dict[str, str], str]]:
        return [(attributes, "".join(said)) for name, attributes, said in self.found if name == tag]


@pytest.fixture(scope="module")
def tree(hard_content: Content) -> Tree:
    return Tree(page(hard_content, ("<svg xmlns='http://www.w3.org/2000/svg'/>",)))


def test_client_text_is_never_markup(hard_content: Content, tree: Tree) -> None:
    assert not tree.all("script")
    assert tree.all("h1")[0][1] == hard_content.title
    said = "".join(text for _, text in tree.all("dd"))
    for session in hard_content.sessions:
        for line in session.lines:
            assert line.note in said


def test_nothing_comes_from_outside(tree: Tree) -> None:
    for tag, attributes, _ in tree.found:
        assert not [key for key in attributes if key.startswith("on")]
        for key in ("src", "href"):
            if key in attributes:
                assert attributes[key].startswith(("#", "data:image/svg+xml;base64,")), tag
    assert "url(" not in STYLE.read_text() and "@import" not in STYLE.read_text()
    policy = [one["content"] for one, _ in tree.all("meta") if "http-equiv" in one]
    assert policy and policy[0].startswith("default-src 'none'")


def test_headings_step_by_one_and_landmarks_are_there(tree: Tree) -> None:
    levels = [int(tag[1]) for tag, _, _ in tree.found if re.fullmatch("h[1-6]", tag)]
    assert levels[0] == 1 and levels.count(1) == 1
    assert all(after - before <= 1 for before, after in itertools.pairwise(levels))
    for landmark in ("header", "nav", "main", "footer"):
        assert len(tree.all(landmark)) == 1
    assert tree.all("html")[0][0]["lang"] == "en"
    assert tree.all("title")[0][1]


def test_references_meet_one_id(tree: Tree) -> None:
    ids = [one["id"] for _, one, _ in tree.found if "id" in one]
    assert len(ids) == len(set(ids))
    for _, one, _ in tree.found:
        if one.get("href", "").startswith("#"):
            assert one["href"][1:] in ids
        if "aria-labelledby" in one:
            assert one["aria-labelledby"] in ids


def test_tables_have_captions_and_scoped_headers(tree: Tree) -> None:
    assert len(tree.all("table")) == len(tree.all("caption"))
    assert all(one["scope"] in ("col", "row") for one, _ in tree.all("th"))
    assert all(one["alt"] for one, _ in tree.all("img"))
    scrolled = [one for _, one, _ in tree.found if one.get("class") == "wide"]
    assert scrolled and all(one["tabindex"] == "0" and one["aria-label"] for one in scrolled)


def _luminance(colour: str) -> float:
    parts = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    linear = [one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4 for one in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    """Contrast ratio as the Web Content Accessibility Guidelines 2.2 define it."""
    lighter, darker = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def test_contrast_meets_aa_on_light_dark_and_paper() -> None:
    # WCAG 2.2, 1.4.3 (text 4.5:1) and 1.4.11 (lines that mark a control or a cell 3:1).
    palettes = re.findall(r":root \{([^}]*)\}", STYLE.read_text())
    assert len(palettes) == 3
    for palette in palettes:
        colour = dict(re.findall(r"--(\w+): (#\w{6})", palette))
        for ground in ("paper", "band"):
            for ink in ("ink", "soft", "link"):
                assert contrast(colour[ink], colour[ground]) >= 4.5
            assert contrast(colour["line"], colour[ground]) >= 3


@settings(derandomize=True, max_examples=60, deadline=None)
@given(words=st.text(min_size=1, max_size=60))
def test_any_title_is_escaped(client_content: Content, words: str) -> None:
    made = page(dataclasses.replace(client_content, title=words))
    made.encode("utf-8")
    tree = Tree(made)
    shown = NOWHERE.sub(" ", words)
    assert tree.all("h1")[0][1] == shown
    assert tree.all("title")[0][1] == shown
