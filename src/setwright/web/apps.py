"""The Django application that holds every model of the workspace."""

from __future__ import annotations

from django.apps import AppConfig


class WebConfig(AppConfig):
    """One application: the parts of the workspace share their models."""

    name = "setwright.web"
    label = "workspace"
    default_auto_field = "django.db.models.BigAutoField"
