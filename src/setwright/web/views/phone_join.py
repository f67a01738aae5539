"""The invitation: made by the coach, opened by the client on the phone."""

from __future__ import annotations

from uuid import UUID

from django.contrib.auth import login
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.debug import sensitive_variables
from django.views.decorators.http import require_http_methods

from setwright.web import trail
from setwright.web.phone.invitations import invite_client, open_invitation, use
from setwright.web.security import rates
from setwright.web.security.access import Who, open_to, own_client, who_am_i
from setwright.web.views.account import address

# The link cannot be asked for in the gym, so the phone stays signed in for long.
SESSION_S = 180 * 24 * 3600
# In a quarter of an hour: a whole new group of clients at once.
MOST_INVITATIONS = 40


@open_to(Who.COACH)
@require_http_methods(["GET", "HEAD", "POST"])
@sensitive_variables("token", "link")
def invite(request: HttpRequest, client: UUID) -> HttpResponse:
    """Say what a link does; make one for a client, and show it this once."""
    coach, found = who_am_i(request), own_client(request, client)
    if found.archived_at is not None:
        return _page(request, {"client": found, "archived": True}, 409, "phone/invite.html")
    if request.method != "POST":
        return _page(request, {"client": found}, 200, "phone/invite.html")
    if rates.too_often(f"invite client {coach.uuid}", MOST_INVITATIONS):
        return _page(request, {"client": found, "too_often": True}, 429, "phone/invite.html")
    others = "sign_out_others" in request.POST
    token, expires_at = invite_client(found, coach, others)
    trail.note(coach, found, "invited", "other phones signed out" if others else "")
    link = request.build_absolute_uri(reverse("join", args=[token]))
    context = {"client": found, "link": link, "expires_at": expires_at, "signed_out": others}
    return _page(request, context, 200, "phone/invite.html")


@open_to(Who.ANYONE)
@require_http_methods(["GET", "HEAD", "POST"])
@sensitive_variables("token")
def join(request: HttpRequest, token: str) -> HttpResponse:
    """Ask first, so that a preview of the link does not use it up; then let the client in."""
    invitation = open_invitation(token)
    guessing = request.method == "POST" or invitation is None
    if guessing and rates.too_often(f"join from {address(request)}"):
        return _page(request, {"too_often": True}, 429)
    if invitation is None:
        return _page(request, {"spent": True}, 404)
    if request.method != "POST":
        return _page(request, {"invitation": invitation})
    account = use(invitation)
    if account is None:
        return _page(request, {"spent": True}, 404)
    login(request, account)
    request.session.set_expiry(SESSION_S)
    if invitation.client is not None:
        trail.note(account, invitation.client, "joined", "a phone")
    return redirect(f"{reverse('today')}?joined=1")


def _page(
    request: HttpRequest,
    context: dict[str, object],
    status: int = 200,
    template: str = "phone/join.html",
) -> HttpResponse:
    return render(request, template, context, status=status)
