"""Proposals for the weeks to come: one kind, one module. The coach decides."""
