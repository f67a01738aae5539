"""Django's settings, from the few options of a workspace."""

from __future__ import annotations

from pathlib import Path

from setwright.web.assets import version
from setwright.web.database import database_of
from setwright.web.options import from_environment, secret_of

OPTIONS = from_environment()
HERE = Path(__file__).parent

SECRET_KEY = secret_of(OPTIONS.folder)
DEBUG = OPTIONS.debug
ALLOWED_HOSTS = list(OPTIONS.hosts)
CSRF_TRUSTED_ORIGINS = [f"https://{host}" for host in OPTIONS.hosts if OPTIONS.https]
ROOT_URLCONF = "setwright.web.urls"
WSGI_APPLICATION = "setwright.web.wsgi.application"

INSTALLED_APPS = [
    "django.contrib.auth",
    "django.contrib.contenttypes",
    "django.contrib.sessions",
    "django.contrib.messages",
    "django.contrib.staticfiles",
    "django_htmx",
    "setwright.web.apps.WebConfig",
]
MIDDLEWARE = [
    "django.middleware.security.SecurityMiddleware",
    "setwright.web.security.headers.HeadersMiddleware",
    # Before the files, which nobody else packs.
    "django.middleware.gzip.GZipMiddleware",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "setwright.web.server.request_log.RequestLogMiddleware",
    "django.contrib.sessions.middleware.SessionMiddleware",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django.contrib.auth.middleware.AuthenticationMiddleware",
    "django.contrib.messages.middleware.MessageMiddleware",
    "django.middleware.clickjacking.XFrameOptionsMiddleware",
    "django_htmx.middleware.HtmxMiddleware",
    "setwright.web.security.access.AccessMiddleware",
]
TEMPLATES = [
    {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        "DIRS": [HERE / "templates"],
        "OPTIONS": {
            "context_processors": [
                "django.template.context_processors.request",
                "django.contrib.auth.context_processors.auth",
                "django.contrib.messages.context_processors.messages",
            ],
            "builtins": ["setwright.web.templatetags.setwright"],
        },
    }
]

DATABASES = {"default": database_of(OPTIONS)}
AUTH_USER_MODEL = "workspace.Account"
PASSWORD_HASHERS = [
    "django.contrib.auth.hashers.Argon2PasswordHasher",
    "django.contrib.auth.hashers.PBKDF2PasswordHasher",
]
AUTH_PASSWORD_VALIDATORS = [
    {"NAME": "django.contrib.auth.password_validation.UserAttributeSimilarityValidator"},
    {
        "NAME": "django.contrib.auth.password_validation.MinimumLengthValidator",
        "OPTIONS": {"min_length": 12},
    },
    {"NAME": "django.contrib.auth.password_validation.CommonPasswordValidator"},
]
LOGIN_URL = "sign-in"
LOGIN_REDIRECT_URL = "home"

SESSION_COOKIE_AGE = 60 * 60 * 24 * 90
SESSION_COOKIE_SECURE = OPTIONS.https
SESSION_COOKIE_SAMESITE = "Lax"
CSRF_COOKIE_SECURE = OPTIONS.https
CSRF_COOKIE_HTTPONLY = True
CSRF_FAILURE_VIEW = "setwright.web.views.errors.csrf_failed"
SECURE_HSTS_SECONDS = 60 * 60 * 24 * 365 if OPTIONS.https else 0
SECURE_HSTS_INCLUDE_SUBDOMAINS = OPTIONS.https
SECURE_HSTS_PRELOAD = OPTIONS.https
SECURE_SSL_REDIRECT = OPTIONS.https
SECURE_REDIRECT_EXEMPT = [r"^health$"]
SECURE_PROXY_SSL_HEADER = ("HTTP_X_FORWARDED_PROTO", "https") if OPTIONS.proxy else None
SECURE_REFERRER_POLICY = "same-origin"
X_FRAME_OPTIONS = "DENY"
DATA_UPLOAD_MAX_MEMORY_SIZE = 6_000_000
FILE_UPLOAD_MAX_MEMORY_SIZE = 6_000_000
DATA_UPLOAD_MAX_NUMBER_FIELDS = 2000

STATIC_URL = f"static/{version()}/"
WHITENOISE_USE_FINDERS = True
WHITENOISE_AUTOREFRESH = DEBUG
WHITENOISE_MAX_AGE = 60 * 60 * 24 * 365

LANGUAGE_CODE = "en-gb"
USE_I18N = False
USE_TZ = True
TIME_ZONE = "UTC"
LOGGING_CONFIG = None
