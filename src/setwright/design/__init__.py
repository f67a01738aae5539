"""From intake to the best week under its limits."""
