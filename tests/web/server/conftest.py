"""Commands in processes of their own, on an embedded workspace in a folder."""

import os
import subprocess
import sys

import pytest

KEPT = ("PATH", "HOME", "LANG", "TMPDIR")


@pytest.fixture
def embedded(tmp_path):
    """Run Python words on the workspace in a folder, whatever database the tests run on."""
    keep = {key: os.environ[key] for key in KEPT if key in os.environ}

    def run(*words, **more):
        settings = {"SETWRIGHT_DATA": str(tmp_path / "workspace"), "SETWRIGHT_DEBUG": ""}
        return subprocess.run(
            [sys.executable, *map(str, words)],
            env=keep | settings | more,
            cwd=tmp_path,
            capture_output=True,
            text=True,
            timeout=300,
        )

    return run
