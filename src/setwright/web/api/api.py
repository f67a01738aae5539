"""The API: every route asks for a token, every fault is told as JSON."""

from __future__ import annotations

from dataclasses import asdict

from django.http import Http404, HttpRequest, HttpResponse
from ninja import NinjaAPI
from ninja.errors import ValidationError

from setwright import __version__
from setwright.documents.errors import DocumentError
from setwright.web.api import clients, logs, weeks
from setwright.web.api.tokens import Bearer

api = NinjaAPI(
    title="Setwright workspace",
    version=__version__,
    description="Clients, documents, logs and decisions of the coach whose token is sent. "
    "Documents are the same that the command line reads.",
    auth=Bearer(),
    docs_url=None,
    urls_namespace="api",
)
for one in (clients.router, weeks.router, logs.router):
    api.add_router("/clients", one)


@api.exception_handler(DocumentError)
def at_fault(request: HttpRequest, error: DocumentError) -> HttpResponse:
    """422 with every fault of a document."""
    told = {"detail": str(error), "faults": [asdict(fault) for fault in error.faults]}
    return api.create_response(request, told, status=422)


@api.exception_handler(Http404)
def not_there(request: HttpRequest, error: Http404) -> HttpResponse:
    """404, the same for what is not there and for what is somebody else's."""
    return api.create_response(request, {"detail": "not found"}, status=404)


@api.exception_handler(ValidationError)
def not_as_described(request: HttpRequest, error: ValidationError) -> HttpResponse:
    """422 for a request that is not as the description has it."""
    faults = [
        {"field": ".".join(str(part) for part in one["loc"]), "found": "", "allowed": one["msg"]}
        for one in error.errors
    ]
    told = {"detail": "the request is not as described", "faults": faults}
    return api.create_response(request, told, status=422)
