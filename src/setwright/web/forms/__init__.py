"""Forms and what they say when something is not in order."""
