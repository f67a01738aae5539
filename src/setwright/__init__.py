"""Setwright: muscle-growth training designed, rehearsed and audited by computation."""

__version__ = "0.1.0"
