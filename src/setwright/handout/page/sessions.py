"""The sessions of the page."""

from __future__ import annotations

from setwright.handout.content.model import Group, Line, SessionContent
from setwright.handout.page.tags import Html, joined, tag


def session_html(session: SessionContent, number: int, unit: str) -> Html:
    """One session as a section with its own heading.

    Args:
        session: what it says.
        number: from 1; makes its anchor.
        unit: of the loads that are written down.
    """
    had = "" if session.to_be_had is None else f"; {session.to_be_had} min to be had"
    ident = f"session-{number}"
    return tag(
        "section",
        tag("h2", session.heading, id=ident, dir="auto"),
        tag("p", f"{session.minutes} min (80 % interval {session.interval}{had})", class_="soft"),
        *(_group(group, f"{ident}-{place}", unit) for place, group in enumerate(session.groups)),
        class_="session",
        aria_labelledby=ident,
    )


def _group(group: Group, ident: str, unit: str) -> Html:
    if len(group.lines) == 1:
        return _exercise(group.lines[0], "h3", unit)
    return tag(
        "section",
        tag("h3", f"Superset {group.letter}: one set of each in turn, then rest", id=ident),
        *(_exercise(line, "h4", unit) for line in group.lines),
        class_="superset",
        aria_labelledby=ident,
    )


def _exercise(line: Line, level: str, unit: str) -> Html:
    figures = [
        ("sets × reps", line.dose),
        ("first load", line.load),
        ("RIR", line.rir.replace(" > ", " → ")),
        ("rest", line.rest),
        ("tempo", line.tempo or "own pace"),
    ]
    words = [
        ("Warm up", ", ".join(line.ramp)),
        ("Range", line.range_cue),
        ("Cues", line.cues),
        ("Station taken", line.substitute),
        ("Note", line.note),
    ]
    return tag(
        "div",
        tag(level, f"{line.mark} {line.name}"),
        _list(figures, "figures"),
        _list([pair for pair in words if pair[1]], "words"),
        tag("div", _log(line, unit), class_="wide", tabindex="0", role="region",
            aria_label=f"Log of {line.mark} {line.name}"),
        class_="exercise",
    )  # fmt: skip


def _list(pairs: list[tuple[str, str]], kind: str) -> Html:
    return tag(
        "dl",
        *(tag("div", tag("dt", word), tag("dd", said, dir="auto")) for word, said in pairs),
        class_=kind,
    )


def _log(line: Line, unit: str) -> Html:
    heads = joined(
        tag("th", word, scope="col") for word in ("set", "planned RIR", f"load, {unit}", "reps")
    )
    rows = (
        tag(
            "tr",
            tag("th", str(one.number), scope="row"),
            tag("td", one.rir),
            tag("td", class_="write"),
            tag("td", class_="write"),
        )
        for one in line.sets
    )
    return tag(
        "table",
        tag("caption", "Write what you did"),
        tag("thead", tag("tr", heads)),
        tag("tbody", *rows),
    )
