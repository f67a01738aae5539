"""The WSGI application, for the built-in server or any other."""

from __future__ import annotations

import os

from django.core.wsgi import get_wsgi_application

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "setwright.web.settings")
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

application = get_wsgi_application()
