"""Addresses of the workspace."""

from __future__ import annotations

from django.urls import include, path

from setwright.web.views import account, health

urlpatterns = [
    path("", account.home, name="home"),
    path("health", health.health, name="health"),
    path("start", account.start, name="start"),
    path("sign-in", account.sign_in, name="sign-in"),
    path("sign-out", account.sign_out, name="sign-out"),
    path("", include("setwright.web.routes.coach")),
    path("", include("setwright.web.routes.board")),
    path("", include("setwright.web.routes.phone")),
    path("", include("setwright.web.routes.sharing")),
    path("", include("setwright.web.routes.programs")),
]

handler400 = "setwright.web.views.errors.bad_request"
handler403 = "setwright.web.views.errors.forbidden"
handler404 = "setwright.web.views.errors.not_found"
handler500 = "setwright.web.views.errors.failed"
