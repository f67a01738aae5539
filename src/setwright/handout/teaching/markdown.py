"""The teaching document as Markdown."""

from __future__ import annotations

import re
from collections.abc import Mapping

from setwright.handout.teaching.content import (
    Block,
    Picture,
    Points,
    Ruling,
    Source,
    Table,
    Teaching,
    Words,
)

MARKS = re.compile(r"([\\`*_\[\]<>|~$#&!])")
# A line that begins so would be a list, a heading or a rule.
OPENING = re.compile(r"[-+](?=\s|$)|[-=]{2}|\d+(?=[.)](?:\s|$))")
ADDRESS = re.compile(r"(?i)(https?|ftp|www)(?=[:.])")


def escaped(text: str) -> str:
    r"""Text with nothing in it that Markdown or HTML would read as markup, on one line.

    >>> escaped("- *Anna* <b>")
    '\\\\- \\\\*Anna\\\\* \\\\<b\\\\>'
    """
    line = " ".join("".join(one if ord(one) >= 32 else " " for one in text).split())
    line = MARKS.sub(r"\\\1", line)
    line = (
        ADDRESS.sub(lambda found: f"{found[0]}\\", line)
        if "://" in line or "www." in line
        else line
    )
    opening = OPENING.match(line)
    if opening is None:
        return line
    at = opening.end() if opening[0].isdigit() else 0
    return f"{line[:at]}\\{line[at:]}"


def markdown(document: Teaching, pictures: Mapping[str, str]) -> str:
    """The document as one text.

    Args:
        document: what it says.
        pictures: name of each picture to the path it is found at, relative to the text; a picture
            without one is told in words.
    """
    numbers = {one.ident: one.number for one in document.sources}
    lines = [f"# {escaped(document.title)}", escaped(document.subtitle)]
    for section in document.sections:
        lines.append(f"{'#' * section.level} {escaped(section.title)}")
        lines += [_block(block, numbers, pictures) for block in section.blocks]
    if document.sources:
        lines += ["## Sources", "\n".join(_source(one) for one in document.sources)]
    lines.append(f"*{escaped(document.notice)}*")
    return "\n\n".join(lines) + "\n"


def _block(block: Block, numbers: Mapping[str, int], pictures: Mapping[str, str]) -> str:
    if isinstance(block, Words):
        return _words(block, numbers)
    if isinstance(block, Points):
        items = "\n".join(f"- {_words(item, numbers)}" for item in block.items)
        return f"**{escaped(block.caption)}**\n\n{items}" if block.caption else items
    if isinstance(block, Table):
        return _table(block)
    if isinstance(block, Picture):
        path = pictures.get(block.name)
        if path is None:
            return f"*Picture: {escaped(block.alt)}.* {escaped(block.caption)}"
        return f"![{escaped(block.alt)}]({path})\n\n*{escaped(block.caption)}*"
    return _ruling(block, numbers)


def _words(words: Words, numbers: Mapping[str, int]) -> str:
    return f"{escaped(words.text)}{_marks(words.sources, numbers)}"


def _marks(idents: tuple[str, ...], numbers: Mapping[str, int]) -> str:
    given = [str(numbers[ident]) for ident in idents if ident in numbers]
    return f" \\[{', '.join(given)}\\]" if given else ""


def _table(table: Table) -> str:
    rule = ["---:" if at in table.figures else "---" for at in range(len(table.heads))]
    rows = [
        [f"**{escaped(cell)}**" if cell in table.stressed else escaped(cell) for cell in row]
        for row in table.rows
    ]
    text = "\n".join(
        f"| {' | '.join(row)} |" for row in ([escaped(one) for one in table.heads], rule, *rows)
    )
    return f"*{escaped(table.caption)}*\n\n{text}" if table.caption else text


def _ruling(one: Ruling, numbers: Mapping[str, int]) -> str:
    pieces = [
        f"#### {escaped(one.title)}: {one.standing}",
        f"**Asks.** {escaped(one.means)}",
        f"**Why.** {escaped(one.matters)}",
        f"**Here.** {escaped(one.counts)}.",
    ]
    found = [
        " ".join(
            filter(
                None,
                (
                    f"- *{it.verdict}:* {escaped(it.words)}",
                    escaped(it.mend),
                    f"*Declared unavoidable:* {escaped(it.declared)}." if it.declared else "",
                ),
            )
        )
        for it in one.found
    ]
    held = [f"- {escaped(it)}" for it in one.held]
    if found or held:
        pieces.append("\n".join((*found, *held)))
    pieces.append(
        f"**Evidence: {one.strength}.** {escaped(one.weighed)}{_marks(one.sources, numbers)}. "
        f"{escaped(one.thin)}"
    )
    if one.shown:
        pieces.append("\n".join(f"- {_words(it, numbers)}" for it in one.shown))
    return "\n\n".join(pieces)


def _source(one: Source) -> str:
    cited = f" *{escaped(one.cited)}.*" if one.cited else ""
    doi = f" [doi {escaped(one.doi)}](https://doi.org/{one.doi})." if one.doi else ""
    return f"{one.number}. {escaped(one.finding)}{cited}{doi} {escaped(one.kind)}."
