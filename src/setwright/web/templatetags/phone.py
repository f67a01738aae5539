"""Tags of the phone's templates."""

from __future__ import annotations

from django import template
from django.urls import reverse

from setwright.web.assets import version
from setwright.web.phone.modules import modules

register = template.Library()


@register.simple_tag
def phone_module(name: str) -> str:
    """Address of a script of the phone.

    Raises:
        TemplateSyntaxError: when there is none of that name.
    """
    if name not in modules():
        raise template.TemplateSyntaxError(f"no script {name}")
    return reverse("phone-module", args=[version(), name])
