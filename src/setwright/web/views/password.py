"""Changing one's password."""

from __future__ import annotations

from django.contrib import messages
from django.contrib.auth import update_session_auth_hash
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.debug import sensitive_post_parameters
from django.views.decorators.http import require_http_methods

from setwright.web.forms.sharing import PasswordForm
from setwright.web.security import rates
from setwright.web.security.access import Who, open_to, who_am_i


@open_to(Who.COACH)
@sensitive_post_parameters()
@require_http_methods(["GET", "HEAD", "POST"])
def password(request: HttpRequest) -> HttpResponse:
    """A new password: every other session ends, this one goes on."""
    account = who_am_i(request)
    if request.method != "POST":
        return render(request, "account/password.html", {"form": PasswordForm(account)})
    form = PasswordForm(account, request.POST)
    if rates.too_often(f"password {account.uuid}"):
        form.errors.clear()
        form.add_error(None, "Too many attempts. Try again in a quarter of an hour.")
    elif form.is_valid():
        account.set_password(form.cleaned_data["new"])
        account.save(update_fields=["password"])
        update_session_auth_hash(request, account)
        rates.forgive(f"password {account.uuid}")
        messages.success(request, "Your password is changed. Other devices are signed out.")
        return redirect("password")
    return render(request, "account/password.html", {"form": form}, status=422)
