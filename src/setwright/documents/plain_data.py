"""Results of the engine as data that JSON can hold."""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from typing import Any

import numpy as np
from pydantic import BaseModel


def plain(value: Any) -> Any:
    """A value as JSON can hold it: documents, results and arrays become plain data."""
    if isinstance(value, BaseModel):
        return value.model_dump(mode="json", exclude_none=True)
    if is_dataclass(value) and not isinstance(value, type):
        return {item.name: plain(getattr(value, item.name)) for item in fields(value)}
    if isinstance(value, np.ndarray):
        return np.round(value, 4).tolist()
    if isinstance(value, np.generic):
        return plain(value.item())
    if isinstance(value, dict):
        return {str(key): plain(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [plain(item) for item in value]
    return round(value, 4) if isinstance(value, float) else value
