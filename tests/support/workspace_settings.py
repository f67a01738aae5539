"""The workspace's settings for tests: a folder that goes away, PostgreSQL where one is named."""

import os
import tempfile

_FOLDER = tempfile.TemporaryDirectory(prefix="setwright-tests-")
os.environ["SETWRIGHT_DATA"] = _FOLDER.name
os.environ["SETWRIGHT_SECRET"] = "for tests only"
os.environ["SETWRIGHT_DATABASE"] = os.environ.get("SETWRIGHT_TEST_DATABASE", "")

from setwright.web.settings import *  # noqa: E402, F403

# Hashing passwords is slow on purpose; the tests of signing in use the real hasher.
PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher", *PASSWORD_HASHERS]  # noqa: F405

# In a file, as in earnest: every thread has a connection of its own, and waits for its turn.
if "sqlite3" in DATABASES["default"]["ENGINE"]:  # noqa: F405
    DATABASES["default"]["TEST"] = {"NAME": f"{_FOLDER.name}/test.sqlite3"}  # noqa: F405
