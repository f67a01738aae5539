"""Pages: read the request, call the engine, render."""
