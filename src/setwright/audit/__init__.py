"""A plan held against the criteria."""
