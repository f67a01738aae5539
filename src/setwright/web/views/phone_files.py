"""Files of the phone's page that belong to nobody: scripts, worker, manifest, icons."""

from __future__ import annotations

from django.http import Http404, HttpRequest, HttpResponse, JsonResponse
from django.urls import reverse
from django.views.decorators.http import require_safe

from setwright.web.assets import version
from setwright.web.phone import icon as drawing
from setwright.web.phone.modules import modules
from setwright.web.security.access import Who, open_to
from setwright.web.templatetags.setwright import asset

FOREVER = "public, max-age=31536000, immutable"
SCRIPT = "text/javascript; charset=utf-8"
STYLES = ("css/tokens.css", "css/page.css", "css/phone.css")


@open_to(Who.ANYONE)
@require_safe
def module(request: HttpRequest, of_version: str, name: str) -> HttpResponse:
    """A script of the page. Another version's address gives today's script, not to be kept."""
    found = modules().get(name)
    if found is None:
        raise Http404
    response = HttpResponse(found, content_type=SCRIPT)
    response["Cache-Control"] = FOREVER if of_version == version() else "no-store"
    return response


@open_to(Who.ANYONE)
@require_safe
def worker(request: HttpRequest) -> HttpResponse:
    """The service worker: it names what to keep, so that it changes when that does."""
    names = [reverse("phone-module", args=[version(), name]) for name in modules()]
    kept = [*names, *(asset(style) for style in STYLES), reverse("phone-icon", args=[192])]
    begin = reverse("phone-module", args=[version(), "worker"])
    lines = [f'import {{ begin }} from "{begin}";', "begin(self, ["]
    lines += [f'  "{name}",' for name in kept]
    response = HttpResponse("\n".join([*lines, "]);\n"]), content_type=SCRIPT)
    response["Service-Worker-Allowed"] = reverse("today")
    response["Cache-Control"] = "no-cache"
    return response


@open_to(Who.ANYONE)
@require_safe
def manifest(request: HttpRequest) -> HttpResponse:
    """What an installed page is called and looks like."""
    icons = [
        {
            "src": reverse("phone-icon", args=[size]),
            "sizes": f"{size}x{size}",
            "type": "image/png",
            "purpose": purpose,
        }
        for size in drawing.SIZES[1:]
        for purpose in ("any", "maskable")
    ]
    answer = {
        "id": reverse("today"),
        "name": "Setwright: today's training",
        "short_name": "Training",
        "start_url": reverse("today"),
        "scope": reverse("today"),
        "display": "standalone",
        "background_color": "#fbfaf7",
        "theme_color": "#14507f",
        "icons": icons,
    }
    return JsonResponse(answer, content_type="application/manifest+json")


@open_to(Who.ANYONE)
@require_safe
def icon(request: HttpRequest, size: int) -> HttpResponse:
    """The icon in one of its sizes."""
    if size not in drawing.SIZES:
        raise Http404
    response = HttpResponse(drawing.icon(size), content_type="image/png")
    response["Cache-Control"] = "public, max-age=604800"
    return response
