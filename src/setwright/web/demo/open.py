"""Opening the demo: filled once, its sign-in the same every time."""

from __future__ import annotations

import hashlib
import hmac
from datetime import date

from django.conf import settings

from setwright.documents.errors import DocumentError, Fault
from setwright.web.demo.cast import EMAIL
from setwright.web.demo.fill import fill
from setwright.web.models import Account


def open_demo(today: date | None = None) -> str:
    """Fill an empty workspace, and say how to sign in.

    Args:
        today: the day its logs lead up to.

    Raises:
        DocumentError: when the workspace holds something else than the demo.
    """
    lines = [f"The demo. Sign in as {EMAIL} with the password {password()}"]
    if not Account.objects.exists():
        filled = fill(today or date.today(), password())
        lines.append(f"A client's phone, once: /join/{filled.phone}")
    elif not Account.objects.filter(email=EMAIL).exists():
        fault = Fault(
            "--demo", "a workspace in use", "an empty one, or none for one that goes away"
        )
        raise DocumentError("workspace", (fault,))
    return "\n".join(lines)


def password() -> str:
    """Of the demo's owner: made from the workspace's secret, so it stands nowhere."""
    digest = hmac.new(settings.SECRET_KEY.encode(), b"demo", hashlib.sha256).hexdigest()
    return f"{digest[:5]}-{digest[5:10]}-{digest[10:15]}"
