"""Muscles, their parts, what each crosses and does."""
