"""The base every document model stands on."""

from __future__ import annotations

from pydantic import BaseModel, ConfigDict


class Document(BaseModel):
    """A validated piece of a document: unknown fields are refused, values do not change."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False)


UUID_PATTERN = "^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$"
