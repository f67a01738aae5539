"""Reading and writing documents: positions for errors, safe writes, one error type."""
