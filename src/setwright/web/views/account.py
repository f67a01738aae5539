"""First start, sign-in and sign-out."""

from __future__ import annotations

import hmac

from django.conf import settings
from django.contrib.auth import authenticate, login, logout
from django.db import transaction
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.http import url_has_allowed_host_and_scheme
from django.views.decorators.http import require_http_methods, require_POST

from setwright.web.forms.account import SignInForm, StartForm
from setwright.web.models import Account, Organisation
from setwright.web.security import rates
from setwright.web.security.access import Who, open_to, who_am_i
from setwright.web.server.start_code import start_code


@open_to(Who.ANYONE)
def home(request: HttpRequest) -> HttpResponse:
    """Where each one begins."""
    if not Account.objects.exists():
        return redirect("start")
    if not isinstance(request.user, Account):
        return redirect("sign-in")
    return redirect("roster" if request.user.coaches else "today")


@open_to(Who.ANYONE)
@require_http_methods(["GET", "POST"])
def start(request: HttpRequest) -> HttpResponse:
    """The first account: the owner's, made with the code that the server printed."""
    if Account.objects.exists():
        raise Http404
    form = StartForm(request.POST or None)
    if request.method == "POST" and rates.too_often(f"start {address(request)}"):
        form.add_error(None, "Too many attempts. Try again in a quarter of an hour.")
    elif request.method == "POST" and form.is_valid():
        if not hmac.compare_digest(form.cleaned_data["code"].strip(), start_code()):
            form.add_error("code", "That is not the code that the server printed.")
        else:
            login(request, _first_account(form))
            return redirect("roster")
    return render(request, "account/start.html", {"form": form}, status=_status(request))


@open_to(Who.ANYONE)
@require_http_methods(["GET", "POST"])
def sign_in(request: HttpRequest) -> HttpResponse:
    """Sign in with email and password."""
    form = SignInForm(request.POST or None)
    onward = request.POST.get("next") or request.GET.get("next", "")
    if request.method == "POST" and form.is_valid():
        email = form.cleaned_data["email"].strip().lower()
        keys = (f"sign-in {email}", f"sign-in from {address(request)}")
        if any([rates.too_often(keys[0]), rates.too_often(keys[1], 5 * rates.MOST)]):
            form.add_error(None, "Too many attempts. Try again in a quarter of an hour.")
        elif account := authenticate(
            request, username=email, password=form.cleaned_data["password"]
        ):
            rates.forgive(keys[0])
            login(request, account)
            return redirect(onward if _ours(request, onward) else "home")
        else:
            form.add_error(None, "Email and password do not belong together.")
    context = {"form": form, "next": onward}
    return render(request, "account/sign_in.html", context, status=_status(request))


@open_to(Who.SIGNED_IN)
@require_POST
def sign_out(request: HttpRequest) -> HttpResponse:
    """Sign out."""
    who_am_i(request)
    logout(request)
    return redirect("sign-in")


def address(request: HttpRequest) -> str:
    """Where a request came from; a proxy's word counts only where one is declared."""
    if settings.OPTIONS.proxy:
        forwarded: str = request.headers.get("X-Forwarded-For", "").rpartition(",")[2].strip()
        if forwarded:
            return forwarded
    return str(request.META.get("REMOTE_ADDR", ""))


def _first_account(form: StartForm) -> Account:
    data = form.cleaned_data
    with transaction.atomic():
        organisation = Organisation.objects.create(name=data["organisation"])
        return Account.objects.create(
            email=data["email"],
            password=data["password"],
            name=data["name"],
            role=Account.Role.OWNER,
            organisation=organisation,
        )


def _ours(request: HttpRequest, url: str) -> bool:
    return bool(url) and url_has_allowed_host_and_scheme(
        url, {request.get_host()}, require_https=request.is_secure()
    )


def _status(request: HttpRequest) -> int:
    return 422 if request.method == "POST" else 200
