"""Tokens of links: shown once, kept as a hash."""

from __future__ import annotations

import hashlib
import secrets


def new_token() -> str:
    """A token nobody can guess: 256 random bits."""
    return secrets.token_urlsafe(32)


def hash_of(token: str) -> str:
    """What is kept of a token; being random, it needs no salt."""
    return hashlib.sha256(token.encode()).hexdigest()
