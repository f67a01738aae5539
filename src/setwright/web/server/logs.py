"""Logs as lines of JSON that hold no address with a token, no name and no document."""

from __future__ import annotations

import json
import logging
import sys
import traceback
from datetime import UTC, datetime
from types import TracebackType
from typing import TextIO


class JsonFormatter(logging.Formatter):
    """One JSON object a line: when, how bad, who says it, what."""

    def format(self, record: logging.LogRecord) -> str:
        """A record as JSON. Of an exception its kind and its places, not its words."""
        line: dict[str, object] = {
            "at": datetime.fromtimestamp(record.created, UTC).isoformat(timespec="milliseconds"),
            "level": record.levelname.lower(),
            "logger": record.name,
        }
        fields = getattr(record, "fields", None)
        if isinstance(fields, dict):
            line |= fields
        elif hasattr(record, "status_code"):
            # Django's own words on a request hold its path.
            line["status"] = record.status_code
        else:
            line["message"] = record.getMessage()
        if record.exc_info and record.exc_info[0] is not None:
            line["error"] = record.exc_info[0].__name__
            line["where"] = _places(record.exc_info[2])
        return json.dumps(line, default=str)


def _places(trace: TracebackType | None) -> list[str]:
    frames = traceback.extract_tb(trace)
    return [f"{frame.filename}:{frame.lineno} {frame.name}" for frame in frames[-8:]]


def configure(stream: TextIO | None = None) -> None:
    """Send every logger's lines to one stream, standard error by default."""
    handler = logging.StreamHandler(stream or sys.stderr)
    handler.setFormatter(JsonFormatter())
    root = logging.getLogger()
    root.handlers[:] = [handler]
    root.setLevel(logging.INFO)
    # Every request has a line of ours already; only a fault of the server's needs Django's.
    logging.getLogger("django.request").setLevel(logging.ERROR)
