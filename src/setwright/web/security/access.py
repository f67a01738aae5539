"""Every page says who may open it; a page that says nothing opens for nobody."""

from __future__ import annotations

from collections.abc import Callable
from enum import StrEnum
from typing import Any, TypeVar
from uuid import UUID

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect

from setwright.web.models import Account, Client

V = TypeVar("V", bound=Callable[..., Any])


class Who(StrEnum):
    """Kinds of visitors a page may be open to."""

    ANYONE = "anyone"
    SIGNED_IN = "signed in"
    COACH = "coach"
    OWNER = "owner"
    CLIENT = "client"


def open_to(who: Who) -> Callable[[V], V]:
    """Declare who may open a page."""

    def mark(view: V) -> V:
        view.open_to = who  # type: ignore[attr-defined]
        return view

    return mark


def who_am_i(request: HttpRequest) -> Account:
    """The account that is signed in.

    Raises:
        Http404: when nobody is; pages for anyone must not ask.
    """
    if not isinstance(request.user, Account):
        raise Http404
    return request.user


def own_client(request: HttpRequest, uuid: UUID) -> Client:
    """A client of the coach who is signed in.

    Raises:
        Http404: for anybody else's, which thereby looks like one that is not there.
    """
    return get_object_or_404(Client, uuid=uuid, coach=who_am_i(request))


def myself(request: HttpRequest) -> Client:
    """The client who is signed in.

    Raises:
        Http404: when the account is no client's.
    """
    return get_object_or_404(Client, account=who_am_i(request), archived_at=None)


def _allowed(account: Account, who: Who) -> bool:
    match who:
        case Who.COACH:
            return account.coaches
        case Who.OWNER:
            return account.owns
        case Who.CLIENT:
            return account.role == Account.Role.CLIENT
        case _:
            return True


class AccessMiddleware:
    """Lets a request through to a page only when the page is open to who asks."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Go on; the check is made when the view is known."""
        return self.get_response(request)

    def process_view(
        self, request: HttpRequest, view: Callable[..., Any], args: object, kwargs: object
    ) -> HttpResponse | None:
        """Send strangers to the sign-in, and others away as if nothing were there."""
        who = getattr(view, "open_to", None)
        if who is Who.ANYONE:
            return None
        account = request.user
        if not isinstance(account, Account):
            if who is None:
                raise Http404
            return redirect(f"/sign-in?next={request.get_full_path()}")
        if who is None or not _allowed(account, who):
            raise Http404
        return None
