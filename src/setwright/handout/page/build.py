"""The whole page: header, sessions, cautions, and the coach's part."""

from __future__ import annotations

from base64 import b64encode
from pathlib import Path

from setwright.handout.content.model import CoachContent, Content, Finding, PartRow
from setwright.handout.page.sessions import session_html
from setwright.handout.page.tags import Html, joined, tag, void

STYLE = Path(__file__).parent / "style.css"
# Nothing is fetched, nothing runs; only the page's own style and pictures inside it.
POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:"
LEGEND = (
    "RIR: repetitions in reserve, first set → last set. Rest: between sets of the same exercise. "
    "Load: a hand for dumbbells. Tempo: seconds lowering/stretched/lifting/top."
)


def page(content: Content, week: tuple[str, ...] = ()) -> str:
    """One self-contained HTML document.

    Args:
        content: what it says.
        week: pictures of the week as SVG, shown to the coach.
    """
    places = [(f"session-{number}", one.heading) for number, one in enumerate(content.sessions, 1)]
    if content.coach is not None:
        places.append(("coach", "For the coach"))
    places.append(("care", "Stop signs and cautions"))
    whose = tag("p", f"for {content.person}", dir="auto") if content.person else Html("")
    body = tag(
        "body",
        tag("a", "Skip to the sessions", href="#sessions", class_="skip"),
        tag(
            "header",
            tag("h1", content.title, dir="auto"),
            whose,
            tag("p", content.summary, class_="soft"),
        ),
        tag(
            "nav",
            tag("ul", *(tag("li", tag("a", said, href=f"#{at}")) for at, said in places)),
            aria_label="Contents",
        ),
        tag(
            "main",
            tag("p", LEGEND, class_="soft"),
            *(
                session_html(one, number, content.unit)
                for number, one in enumerate(content.sessions, 1)
            ),
            _coach(content.coach, week) if content.coach else Html(""),
            _care(content),
            id="sessions",
        ),
        tag("footer", tag("p", content.ask[-1])),
    )
    head = tag(
        "head",
        void("meta", charset="utf-8"),
        void("meta", http_equiv="Content-Security-Policy", content=POLICY),
        void("meta", name="viewport", content="width=device-width, initial-scale=1"),
        tag("title", content.title),
        tag("style", Html(STYLE.read_text(encoding="utf-8"))),
    )
    return f"<!DOCTYPE html>\n{tag('html', head, body, lang='en')}\n"


def _care(content: Content) -> Html:
    items = (*content.own_cautions, *content.stop_signs, *content.ask)
    return tag(
        "section",
        tag("h2", "Stop signs and cautions", id="care"),
        tag("ul", *(tag("li", one) for one in items)),
        aria_labelledby="care",
    )


def _coach(coach: CoachContent, week: tuple[str, ...]) -> Html:
    pictures = (_picture(one, place, len(week)) for place, one in enumerate(week, 1))
    return tag(
        "section",
        tag("h2", "For the coach", id="coach"),
        tag("p", f"Audit: {coach.counts}."),
        _findings("Misses", coach.misses),
        _findings("Close", coach.close),
        tag("h3", "Holds throughout"),
        tag("p", "; ".join(coach.holds) + "."),
        tag("h3", "The week"),
        *pictures,
        tag("h3", "What each part gets"),
        tag("div", _parts(coach.parts), class_="wide", tabindex="0", role="region",
            aria_label="What each part gets"),
        class_="session",
        aria_labelledby="coach",
    )  # fmt: skip


def _picture(drawn: str, place: int, of: int) -> Html:
    """A picture at its own size, in a box that scrolls where the screen is narrower."""
    name = f"The week, picture {place} of {of}"
    picture = void(
        "img",
        src=f"data:image/svg+xml;base64,{b64encode(drawn.encode()).decode()}",
        alt=f"{name}: sessions side by side on one scale of minutes; "
        "the sessions above say the same in words",
    )
    return tag("div", picture, class_="wide", tabindex="0", role="region", aria_label=name)


def _findings(title: str, findings: tuple[Finding, ...]) -> Html:
    if not findings:
        return Html("")
    return joined((tag("h3", title), tag("ul", *(tag("li", _said(one)) for one in findings))))


def _said(one: Finding) -> str:
    mend = f" Mend: {one.mend}" if one.mend else ""
    declared = f" Declared unavoidable: {one.unavoidable}." if one.unavoidable else ""
    return f"{one.words}{mend}{declared}"


def _parts(rows: tuple[PartRow, ...]) -> Html:
    heads = ("part", "sets a week", "target", "standing", "days", "growth, % a week (80 %)")
    return tag(
        "table",
        tag("caption", "Fractional sets a week against the target of the aims"),
        tag("thead", tag("tr", *(tag("th", one, scope="col") for one in heads))),
        tag(
            "tbody",
            *(
                tag(
                    "tr",
                    tag("th", row.part, scope="row"),
                    tag("td", f"{row.sets:g}", class_="figure"),
                    tag("td", row.target or "none"),
                    tag("td", row.standing),
                    tag("td", str(row.days), class_="figure"),
                    tag("td", row.growth, class_="figure"),
                )
                for row in rows
            ),
        ),
    )
