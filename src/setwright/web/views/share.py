"""A week by a read-only link, and the page where its links are made and taken back."""

from __future__ import annotations

from datetime import date
from uuid import UUID

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_POST, require_safe

from setwright.web import trail
from setwright.web.forms.sharing import LinkForm
from setwright.web.models import ShareLink, Week
from setwright.web.security.access import Who, open_to, own_client, who_am_i
from setwright.web.sharing.links import links_of, make_link, open_link
from setwright.web.sharing.printed import NAMES, shared_content, shared_pictures, shared_sessions


def own_week(request: HttpRequest, client: UUID, monday: date) -> Week:
    """A week of a client of the coach who is signed in, with a plan in it.

    Raises:
        Http404: for anybody else's, and for one without a plan.
    """
    found = get_object_or_404(
        Week.objects.select_related("client", "current", "sent"),
        client=own_client(request, client),
        starts=monday,
    )
    if found.current is None:
        raise Http404
    return found


@open_to(Who.COACH)
@require_safe
def share(request: HttpRequest, client: UUID, monday: date) -> HttpResponse:
    """Files and links of a week."""
    return _page(request, own_week(request, client, monday), LinkForm())


@open_to(Who.COACH)
@require_POST
def make(request: HttpRequest, client: UUID, monday: date) -> HttpResponse:
    """A new link to the week as it stands; its address is shown this once."""
    week = own_week(request, client, monday)
    form = LinkForm(request.POST)
    if not form.is_valid():
        return _page(request, week, form, 422)
    assert week.current is not None
    days = form.cleaned_data["days"]
    token = make_link(week.current, who_am_i(request), days, timezone.now())
    trail.note(who_am_i(request), week.client, "made a link", f"week {monday}, {days} days")
    context = {
        "title": "A link to the week",
        "words": f"Whoever has this address sees the week, read-only, for {days} days.",
        "shown": request.build_absolute_uri(reverse("shared", args=[token])),
        "back": reverse("share", args=[client, monday]),
        "back_words": "Links of the week",
    }
    return render(request, "sharing/shown_once.html", context)


@open_to(Who.COACH)
@require_POST
def revoke(request: HttpRequest, client: UUID, monday: date, link: UUID) -> HttpResponse:
    """End a link."""
    week = own_week(request, client, monday)
    found = get_object_or_404(ShareLink, uuid=link, version__week=week)
    if found.revoked_at is None:
        found.revoked_at = timezone.now()
        found.save(update_fields=["revoked_at"])
        trail.note(who_am_i(request), week.client, "ended a link", f"week {monday}")
    return redirect("share", client, monday)


@open_to(Who.ANYONE)
@require_safe
def shared(request: HttpRequest, token: str) -> HttpResponse:
    """The week, for whoever has the link."""
    link = _link(token)
    text = link.version.text
    week = link.version.week
    trail.note(
        "share link", week.client, "saw", f"week {week.starts}, version {link.version.number}"
    )
    context = {
        "content": shared_content(text),
        "sessions": shared_sessions(text),
        "pictures": range(1, len(shared_pictures(text)) + 1),
        "token": token,
        "until": link.expires_at,
    }
    return _unlisted(render(request, "sharing/shared.html", context))


@open_to(Who.ANYONE)
@require_safe
def picture(request: HttpRequest, token: str, number: int) -> HttpResponse:
    """One picture of a shared week."""
    pictures = shared_pictures(_link(token).version.text)
    if not 1 <= number <= len(pictures):
        raise Http404
    answer = HttpResponse(pictures[number - 1], content_type="image/svg+xml")
    # A picture brings its own style; nothing else may come in with it.
    answer["Content-Security-Policy"] = "default-src 'none'; style-src 'unsafe-inline'; sandbox"
    return _unlisted(answer)


def _link(token: str) -> ShareLink:
    found = open_link(token, timezone.now())
    if found is None:
        raise Http404
    return found


def _unlisted(answer: HttpResponse) -> HttpResponse:
    answer["X-Robots-Tag"] = "noindex, nofollow"
    answer["Cache-Control"] = "private, no-store"
    answer["Referrer-Policy"] = "no-referrer"
    return answer


def _page(request: HttpRequest, week: Week, form: LinkForm, status: int = 200) -> HttpResponse:
    context = {
        "client": week.client,
        "week": week,
        "form": form,
        "formats": NAMES.items(),
        "links": links_of(week),
        "now": timezone.now(),
    }
    return render(request, "sharing/share.html", context, status=status)
