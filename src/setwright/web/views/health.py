"""Whether the workspace works, for the one who runs it."""

from __future__ import annotations

from django.db import DatabaseError, connection
from django.http import HttpRequest, JsonResponse
from django.views.decorators.http import require_safe

from setwright import __version__
from setwright.web.security.access import Who, open_to


@open_to(Who.ANYONE)
@require_safe
def health(request: HttpRequest) -> JsonResponse:
    """200 when the database answers, 503 when not."""
    try:
        with connection.cursor() as cursor:
            cursor.execute("SELECT 1")
    except DatabaseError:
        return JsonResponse({"status": "no database", "version": __version__}, status=503)
    return JsonResponse({"status": "ok", "version": __version__})
