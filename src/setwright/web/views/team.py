"""The owner's page of coaches, and the way in for an invited one."""

from __future__ import annotations

from uuid import UUID

from django.contrib import messages
from django.contrib.auth import login
from django.db.models import Count, Q
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.debug import sensitive_variables
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from setwright.web.forms.account import NewAccountForm
from setwright.web.forms.sharing import COACHING, MoveForm
from setwright.web.models import Account, Invitation
from setwright.web.security import rates
from setwright.web.security.access import Who, open_to, who_am_i
from setwright.web.sharing import team as coaches
from setwright.web.views.account import address

MOST_INVITATIONS = 20


@open_to(Who.OWNER)
@require_safe
def team(request: HttpRequest) -> HttpResponse:
    """Coaches, open invitations, and clients to be moved."""
    return _page(request, MoveForm(who_am_i(request).organisation))


@open_to(Who.OWNER)
@require_POST
@sensitive_variables("token")
def invite(request: HttpRequest) -> HttpResponse:
    """A link for one coach, shown this once."""
    owner = who_am_i(request)
    if rates.too_often(f"invite {owner.uuid}", MOST_INVITATIONS):
        messages.error(
            request, "Too many invitations: no link was made. Try again in a quarter of an hour."
        )
        return _page(request, MoveForm(owner.organisation), 429)
    token = coaches.invite_coach(owner, timezone.now())
    context = {
        "title": "An invitation for a coach",
        "words": "Send this address to one coach. It works once, within seven days.",
        "shown": request.build_absolute_uri(reverse("join-team", args=[token])),
        "back": reverse("team"),
        "back_words": "Team",
    }
    return render(request, "sharing/shown_once.html", context)


@open_to(Who.OWNER)
@require_POST
def withdraw(request: HttpRequest, invitation: int) -> HttpResponse:
    """Take an invitation of a coach back."""
    found = get_object_or_404(
        Invitation,
        pk=invitation,
        organisation=who_am_i(request).organisation,
        client=None,
        used_at=None,
        revoked_at=None,
    )
    found.revoked_at = timezone.now()
    found.save(update_fields=["revoked_at"])
    return redirect("team")


@open_to(Who.OWNER)
@require_POST
def move(request: HttpRequest) -> HttpResponse:
    """Give a client to another coach."""
    owner = who_am_i(request)
    form = MoveForm(owner.organisation, request.POST)
    if not form.is_valid():
        return _page(request, form, 422)
    client, coach = form.cleaned_data["client"], form.cleaned_data["coach"]
    coaches.move(client, coach, owner)
    messages.success(request, f"{client.name} is with {coach.name} now.")
    return redirect("team")


@open_to(Who.OWNER)
@require_POST
def let_go(request: HttpRequest, coach: UUID) -> HttpResponse:
    """Deactivate a coach whose clients have been moved."""
    found = _coach(request, coach)
    if found.clients.filter(archived_at=None).exists():
        messages.error(request, f"Move the clients of {found.name} to another coach first.")
        return redirect("team")
    coaches.let_go(found, timezone.now())
    messages.success(request, f"{found.name} has no way in any more.")
    return redirect("team")


@open_to(Who.OWNER)
@require_POST
def take_back(request: HttpRequest, coach: UUID) -> HttpResponse:
    """Let a coach in again."""
    found = _coach(request, coach)
    coaches.take_back(found)
    messages.success(request, f"{found.name} can sign in again.")
    return redirect("team")


@open_to(Who.ANYONE)
@require_http_methods(["GET", "HEAD", "POST"])
@sensitive_variables("token")
def join_team(request: HttpRequest, token: str) -> HttpResponse:
    """An invited coach says name, email and password, and is in."""
    invitation = coaches.open_coach_invitation(token, timezone.now())
    guessing = request.method == "POST" or invitation is None
    if guessing and rates.too_often(f"join from {address(request)}"):
        return render(request, "sharing/join_team.html", {"too_often": True}, status=429)
    if invitation is None:
        return render(request, "sharing/join_team.html", {"spent": True}, status=404)
    form = NewAccountForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        said = form.cleaned_data
        made = coaches.join(
            invitation, said["name"], said["email"], said["password"], timezone.now()
        )
        if made is None:
            return render(request, "sharing/join_team.html", {"spent": True}, status=404)
        login(request, made)
        return redirect("roster")
    context = {"form": form, "organisation": invitation.organisation}
    status = 422 if request.method == "POST" else 200
    return render(request, "sharing/join_team.html", context, status=status)


def _coach(request: HttpRequest, coach: UUID) -> Account:
    """A coach of the owner's organisation; never the owner, who cannot lock everybody out."""
    organisation = who_am_i(request).organisation
    return get_object_or_404(
        Account, uuid=coach, organisation=organisation, role=Account.Role.COACH
    )


def _page(request: HttpRequest, form: MoveForm, status: int = 200) -> HttpResponse:
    organisation = who_am_i(request).organisation
    now = timezone.now()
    context = {
        "coaches": organisation.accounts.filter(role__in=COACHING)
        .annotate(current=Count("clients", filter=Q(clients__archived_at=None)))
        .order_by("-is_active", "name"),
        "invitations": Invitation.objects.filter(
            organisation=organisation,
            client=None,
            used_at=None,
            revoked_at=None,
            expires_at__gt=now,
        ).order_by("expires_at"),
        "form": form,
    }
    return render(request, "sharing/team.html", context, status=status)
