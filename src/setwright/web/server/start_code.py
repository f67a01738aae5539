"""The code that the first account is made with."""

from __future__ import annotations

import hashlib
import hmac

from django.conf import settings


def start_code() -> str:
    """The same for every process of a workspace, and known only to who can read its secret."""
    digest = hmac.new(settings.SECRET_KEY.encode(), b"first account", hashlib.sha256)
    code = digest.hexdigest()[:12]
    return f"{code[:4]}-{code[4:8]}-{code[8:]}"
