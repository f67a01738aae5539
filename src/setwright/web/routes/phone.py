"""Addresses of the client in the gym."""

from __future__ import annotations

from django.urls import URLPattern

urlpatterns: list[URLPattern] = []
