"""Tokens for programs: made, shown once, ended."""

from __future__ import annotations

from uuid import UUID

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.debug import sensitive_variables
from django.views.decorators.http import require_POST, require_safe

from setwright.web.api.tokens import make_token
from setwright.web.api.tokens import revoke as end_token
from setwright.web.forms.sharing import TokenForm
from setwright.web.security import rates
from setwright.web.security.access import Who, open_to, who_am_i


@open_to(Who.COACH)
@require_safe
def tokens(request: HttpRequest) -> HttpResponse:
    """One's own tokens."""
    return _page(request, TokenForm())


@open_to(Who.COACH)
@require_POST
@sensitive_variables("token")
def make(request: HttpRequest) -> HttpResponse:
    """A new token, shown this once."""
    account, form = who_am_i(request), TokenForm(request.POST)
    if not form.is_valid():
        return _page(request, form, 422)
    if rates.too_often(f"token {account.uuid}"):
        form.add_error(None, "Too many tokens. Try again in a quarter of an hour.")
        return _page(request, form, 429)
    token = make_token(account, form.cleaned_data["name"])
    context = {
        "title": "A token for a program",
        "words": "The program sends it as the header Authorization: Bearer TOKEN, and may then "
        "do what you may do with your clients.",
        "shown": token,
        "back": reverse("tokens"),
        "back_words": "Programs",
    }
    return render(request, "sharing/shown_once.html", context)


@open_to(Who.COACH)
@require_POST
def revoke(request: HttpRequest, token: UUID) -> HttpResponse:
    """End a token."""
    if not end_token(who_am_i(request), token, timezone.now()):
        raise Http404
    return redirect("tokens")


def _page(request: HttpRequest, form: TokenForm, status: int = 200) -> HttpResponse:
    context = {"form": form, "tokens": who_am_i(request).tokens.order_by("-made_at")}
    return render(request, "sharing/tokens.html", context, status=status)
