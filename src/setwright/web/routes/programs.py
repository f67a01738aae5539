"""Addresses for programs: the JSON API, and the page of its tokens."""

from __future__ import annotations

from collections.abc import Iterable

from django.urls import URLPattern, URLResolver, include, path

import setwright.web.converters  # noqa: F401
from setwright.web.api.api import api
from setwright.web.security.access import Who, open_to
from setwright.web.views import tokens


def _opened(patterns: Iterable[URLPattern | URLResolver]) -> list[URLPattern]:
    """The API's routes, open to anyone as pages go: each asks for a token itself."""
    opened = []
    for one in patterns:
        assert isinstance(one, URLPattern)
        open_to(Who.ANYONE)(one.callback)
        opened.append(one)
    return opened


_PATTERNS, _APP, _NAMESPACE = api.urls

urlpatterns = [
    path("tokens", tokens.tokens, name="tokens"),
    path("tokens/make", tokens.make, name="token-make"),
    path("tokens/<uuid:token>/revoke", tokens.revoke, name="token-revoke"),
    path("api/v1/", include((_opened(_PATTERNS), _APP), namespace=_NAMESPACE)),
]
