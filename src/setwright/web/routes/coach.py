"""Addresses of the roster, the client, the intake and the review."""

from __future__ import annotations

from django.urls import path

from setwright.web.views import roster

urlpatterns = [
    path("clients", roster.roster, name="roster"),
]
