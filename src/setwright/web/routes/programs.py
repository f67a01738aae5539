"""Addresses for programs: the JSON API."""

from __future__ import annotations

from django.urls import URLPattern

urlpatterns: list[URLPattern] = []
