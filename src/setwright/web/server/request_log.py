"""One line of JSON a request, without query strings, names or tokens."""

from __future__ import annotations

import logging
import time
from collections.abc import Callable

from django.http import HttpRequest, HttpResponse

logger = logging.getLogger("setwright.web.requests")


class RequestLogMiddleware:
    """Logs method, route (not the path, which may hold a token), status and milliseconds."""

    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        """Answer and log."""
        begun = time.perf_counter()
        response = self.get_response(request)
        route = request.resolver_match.route if request.resolver_match else ""
        fields = {
            "method": request.method,
            "route": route,
            "status": response.status_code,
            "ms": round(1000 * (time.perf_counter() - begun), 1),
        }
        logger.info("request", extra={"fields": fields})
        return response
