"""Pages for what went wrong."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render

from setwright.web.security.access import Who, open_to


def _page(request: HttpRequest, status: int, title: str, words: str) -> HttpResponse:
    context = {"title": title, "words": words}
    return render(request, "errors/error.html", context, status=status)


@open_to(Who.ANYONE)
def bad_request(request: HttpRequest, exception: Exception | None = None) -> HttpResponse:
    """400."""
    return _page(request, 400, "That could not be read", "The request was not in order.")


@open_to(Who.ANYONE)
def forbidden(request: HttpRequest, exception: Exception | None = None) -> HttpResponse:
    """403."""
    return _page(request, 403, "Not open to you", "Ask your coach if you think it should be.")


@open_to(Who.ANYONE)
def csrf_failed(request: HttpRequest, reason: str = "") -> HttpResponse:
    """403 for a form that was not ours or too old."""
    words = "Go back, reload the page and send the form again. What you wrote is still there."
    return _page(request, 403, "The form had expired", words)


@open_to(Who.ANYONE)
def not_found(request: HttpRequest, exception: Exception | None = None) -> HttpResponse:
    """404."""
    return _page(request, 404, "Not here", "There is no such page, or it is not open to you.")


@open_to(Who.ANYONE)
def failed(request: HttpRequest) -> HttpResponse:
    """500."""
    words = "Nothing was changed. Try once more; if it happens again, tell who runs this workspace."
    return _page(request, 500, "Something went wrong on our side", words)
