"""Headers that keep a page to itself."""

from __future__ import annotations

from collections.abc import Callable

from django.http import HttpRequest, HttpResponse

POLICY = "; ".join(
    (
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "img-src 'self' data:",
        "font-src 'self'",
        "connect-src 'self'",
        "manifest-src 'self'",
        "worker-src 'self'",
        "form-action 'self'",
        "base-uri 'none'",
        "frame-ancestors 'none'",
    )
)


class HeadersMiddleware:
    """Adds the content security policy and what goes with it to every answer."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Answer, with the headers."""
        response = self.get_response(request)
        response.setdefault("Content-Security-Policy", POLICY)
        response.setdefault("Permissions-Policy", "camera=(), geolocation=(), microphone=()")
        if "text/html" in response.get("Content-Type", ""):
            response.setdefault("Cache-Control", "no-store")
        return response
