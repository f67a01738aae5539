"""From the log to the next session: strength now, honesty of effort, next loads, proposals."""
