"""Addresses, one module a part of the workspace."""
