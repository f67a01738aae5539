"""The document as a web page: escaped, closed, named, and readable in light and dark."""

from __future__ import annotations

import itertools
import re
from html.parser import HTMLParser

import pytest

from setwright.handout import canvas
from setwright.handout.teaching.content import Picture, Ruling, Teaching
from setwright.handout.teaching.page import STYLE, page
from setwright.plan.week import Plan

VOID = {"meta", "polyline", "polygon", "rect", "circle", "path"}
Attributes = dict[str, str]


class Tree(HTMLParser):
    """Elements in order with their attributes and words; unbalanced tags are an error."""

    def __init__(self, text: str) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[tuple[str, Attributes, list[str]]] = []
        self.found: list[tuple[str, Attributes, list[str]]] = []
        self.feed(text)
        self.close()
        assert not self.open

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        element = (tag, {key: value or "" for key, value in attrs}, [])
        self.found.append(element)
        if tag not in VOID:
            self.open.append(element)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append((tag, {key: value or "" for key, value in attrs}, []))

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop()[0] == tag

    def handle_data(self, data: str) -> None:
        for _, _, said in self.open:
            said.append(data)

    def all(self, tag: str) -> list[tuple[Attributes, str]]:
        return [(attributes, "".join(said)) for name, attributes, said in self.found if name == tag]


@pytest.fixture(scope="module")
def hard_tree(hard_full: Teaching) -> Tree:
    return Tree(page(hard_full))


@pytest.fixture(scope="module")
def tree(full: Teaching) -> Tree:
    return Tree(page(full))


def test_hostile_words_are_never_markup(hard: Plan, hard_tree: Tree) -> None:
    assert not hard_tree.all("script") and not hard_tree.all("img")
    assert hard_tree.all("h1")[0][1] == hard.title
    note = hard.sessions[0].exercises[0].note
    assert any(words == note for _, words in hard_tree.all("td"))
    assert not [
        key for _, attributes, _ in hard_tree.found for key in attributes if key.startswith("on")
    ]


def test_nothing_comes_from_outside(hard_tree: Tree) -> None:
    policy = next(one["content"] for one, _ in hard_tree.all("meta") if "http-equiv" in one)
    assert policy.startswith("default-src 'none'")
    assert not hard_tree.all("link") and not hard_tree.all("iframe")
    for _, attributes, _ in hard_tree.found:
        assert "src" not in attributes
        outside = attributes.get("href", "#")
        assert outside.startswith(("#", "https://doi.org/10."))


def test_ids_are_unique_and_links_lead_somewhere(tree: Tree) -> None:
    idents = [attributes["id"] for _, attributes, _ in tree.found if "id" in attributes]
    assert len(set(idents)) == len(idents)
    for attributes, _ in tree.all("a"):
        if attributes["href"].startswith("#"):
            assert attributes["href"][1:] in idents
    for _, attributes, _ in tree.found:
        if "aria-labelledby" in attributes:
            assert attributes["aria-labelledby"] in idents


def test_every_picture_has_words_for_those_who_do_not_see_it(full: Teaching, tree: Tree) -> None:
    pictures = [
        block for section in full.sections for block in section.blocks if isinstance(block, Picture)
    ]
    drawn = tree.all("svg")
    assert [one["aria-label"] for one, _ in drawn] == [one.alt for one in pictures]
    assert all(one["role"] == "img" for one, _ in drawn)
    captions = [words for _, words in tree.all("figcaption")]
    assert captions == [one.caption for one in pictures]


def test_headings_go_down_one_level_at_a_time(full: Teaching, tree: Tree) -> None:
    levels = [int(name[1]) for name, _, _ in tree.found if re.fullmatch(r"h[1-6]", name)]
    assert levels[0] == 1 and levels.count(1) == 1
    assert all(after - before <= 1 for before, after in itertools.pairwise(levels))
    titles = [words for _, words in tree.all("h4")]
    rulings = [
        block.title
        for section in full.sections
        for block in section.blocks
        if isinstance(block, Ruling)
    ]
    assert titles == rulings


def test_every_source_is_listed_in_its_place(full: Teaching, tree: Tree) -> None:
    listed = [one["id"] for one, _ in tree.all("li") if one.get("id", "").startswith("source-")]
    assert listed == [f"source-{one.number}" for one in full.sources]


def test_the_page_is_the_same_every_time(full: Teaching) -> None:
    assert page(full) == page(full)


def luminance(grey: float) -> float:
    return grey / 12.92 if grey <= 0.03928 else ((grey + 0.055) / 1.055) ** 2.4


def contrast(one: float, other: float) -> float:
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def test_words_of_pictures_stand_out_in_light_and_dark() -> None:
    turned = re.search(r"invert\((\.\d+)\)", STYLE.read_text(encoding="utf-8"))
    assert turned is not None
    share = float(turned[1])
    for ink in (canvas.INK, canvas.SOFT):
        grey, paper = int(ink[1:3], 16) / 255, int(canvas.PAPER[1:3], 16) / 255
        assert contrast(grey, paper) >= 4.5
        dark = [one * (1 - 2 * share) + share for one in (grey, paper)]
        assert contrast(*dark) >= 4.5
