"""One command, one module; loaded only when called."""
