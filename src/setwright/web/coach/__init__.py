"""What the coach's pages show, as plain data."""
