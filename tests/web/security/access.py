"""Who may open what: one line a route, written by hand and not taken from the code.

A route that is not here fails the tests, so that nobody adds one without saying who it is for.
"""

from __future__ import annotations

from dataclasses import dataclass, field

ALL = ("anonymous", "client", "other client", "coach", "other coach", "owner", "other owner")
SIGNED_IN = ALL[1:]
CLIENTS = ("client", "other client")
COACHES = ("coach", "other coach", "owner", "other owner")
OWNERS = ("owner", "other owner")
THE_OWNER = ("owner",)
THE_COACH = ("coach",)


@dataclass(frozen=True)
class Line:
    """A route: its methods, who may use it, and what is sent along."""

    name: str
    methods: str
    who: tuple[str, ...]
    query: str = ""
    data: dict[str, object] = field(default_factory=dict)


PAGES = (
    Line("home", "GET", ALL),
    Line("health", "GET", ALL),
    Line("sign-in", "GET POST", ALL),
    Line("sign-out", "POST", SIGNED_IN),
    Line("password", "GET POST", COACHES),
    # Of the coach who asks; what is in them is tested apart.
    Line("roster", "GET", COACHES),
    Line("client-add", "POST", COACHES),
    Line("import", "GET POST", COACHES),
    Line("tokens", "GET", COACHES),
    Line("token-make", "POST", COACHES),
    Line("token-revoke", "POST", THE_COACH),
    # One client's, for the client's coach and nobody else, the owner neither.
    Line("client", "GET", THE_COACH),
    Line("client-archive", "POST", THE_COACH),
    Line("client-restore", "POST", THE_COACH),
    Line("client-notes", "POST", THE_COACH),
    Line("client-picture", "GET", THE_COACH),
    Line("client-file", "GET", THE_COACH),
    Line("intake", "GET POST", THE_COACH),
    Line("intake-document", "GET POST", THE_COACH),
    Line("intake-import", "GET POST", THE_COACH),
    Line("intake-version", "GET", THE_COACH),
    Line("intake-put-back", "POST", THE_COACH),
    Line("review", "GET", THE_COACH),
    Line("review-decide", "POST", THE_COACH),
    Line("review-send", "POST", THE_COACH),
    Line("review-strike", "POST", THE_COACH),
    Line("weeks", "GET POST", THE_COACH),
    Line("week-import", "POST", THE_COACH),
    Line("board", "GET", THE_COACH),
    Line("board-edit", "POST", THE_COACH),
    Line("board-undo", "POST", THE_COACH),
    Line("board-redo", "POST", THE_COACH),
    Line("board-lock", "POST", THE_COACH),
    Line("board-send", "POST", THE_COACH),
    Line("board-versions", "GET", THE_COACH),
    Line("board-compare", "GET", THE_COACH, "?a=1&b=2"),
    Line("board-put-back", "POST", THE_COACH, data={"version": "1"}),
    Line("board-design", "GET POST", THE_COACH),
    Line("board-job", "GET", THE_COACH),
    Line("board-cancel", "POST", THE_COACH),
    Line("invite", "POST", THE_COACH),
    Line("share", "GET", THE_COACH),
    Line("share-make", "POST", THE_COACH),
    Line("share-revoke", "POST", THE_COACH),
    Line("handout", "GET", THE_COACH),
    Line("explained", "GET", THE_COACH),
    Line("documents", "GET", THE_COACH),
    Line("archive", "GET", THE_COACH),
    Line("erase", "GET POST", THE_COACH),
    Line("trail", "GET", THE_COACH),
    # The organisation's, for its owner.
    Line("trail-all", "GET", OWNERS),
    Line("team", "GET", OWNERS),
    Line("team-invite", "POST", OWNERS),
    Line("team-move", "POST", OWNERS),
    Line("team-withdraw", "POST", THE_OWNER),
    Line("team-let-go", "POST", THE_OWNER),
    Line("team-take-back", "POST", THE_OWNER),
    # One's own day on the phone; its files are nobody's.
    Line("today", "GET", CLIENTS),
    Line("log-record", "POST", CLIENTS),
    Line("sync", "POST", CLIENTS),
    Line("day-document", "GET", CLIENTS),
    Line("next-set", "GET", CLIENTS, "?exercise=leg-press"),
    Line("own-archive", "GET", CLIENTS),
    Line("own-handout", "GET", ("client",)),
    Line("phone-worker", "GET", ALL),
    Line("phone-manifest", "GET", ALL),
    Line("phone-icon", "GET", ALL),
    Line("phone-module", "GET", ALL),
    # Whoever holds the link.
    Line("join", "GET POST", ALL),
    Line("join-team", "GET POST", ALL),
    Line("shared", "GET", ALL),
    Line("shared-picture", "GET", ALL),
    Line("api:openapi-json", "GET", ALL),
)
# Not there: the first start once there is an account, the API's root.
NOWHERE = (Line("start", "GET POST", ()), Line("api:api-root", "GET", ()))
# With a token of the one who asks; nothing opens by a session.
API = (
    Line("api:list_clients", "GET", COACHES),
    Line("api:add_client", "POST", COACHES, data={"name": "New"}),
    Line("api:get_client", "GET", THE_COACH),
    Line("api:get_intake", "GET", THE_COACH),
    Line("api:put_intake", "PUT", THE_COACH, data={"base": 1, "text": ""}),
    Line("api:list_weeks", "GET", THE_COACH),
    Line("api:get_week", "GET", THE_COACH),
    Line("api:put_week", "PUT", THE_COACH, data={"base": 1, "text": ""}),
    Line("api:get_log", "GET", THE_COACH),
    Line("api:append_log", "POST", THE_COACH, data={"records": []}),
    Line("api:get_review", "GET", THE_COACH),
    Line("api:get_decisions", "GET", THE_COACH),
    Line(
        "api:add_decision", "POST", THE_COACH,
        data={"week": "2026-09-07", "proposal": "1", "choice": "accept"},
    ),
)  # fmt: skip
