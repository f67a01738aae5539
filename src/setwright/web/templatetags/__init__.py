"""What templates need beyond Django's own."""
