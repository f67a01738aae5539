"""One criterion, one module."""
