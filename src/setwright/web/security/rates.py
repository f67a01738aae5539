"""How often something may be tried."""

from __future__ import annotations

from datetime import timedelta

from django.utils import timezone

from setwright.web.models import Attempt

WINDOW = timedelta(minutes=15)
MOST = 10


def too_often(key: str, most: int = MOST) -> bool:
    """Count an attempt and say whether there were too many of them in the last 15 minutes."""
    now = timezone.now()
    Attempt.objects.filter(at__lt=now - WINDOW).delete()
    Attempt.objects.create(key=key[:120])
    return Attempt.objects.filter(key=key[:120], at__gte=now - WINDOW).count() > most


def forgive(key: str) -> None:
    """Forget attempts, after one that was right."""
    Attempt.objects.filter(key=key[:120]).delete()
