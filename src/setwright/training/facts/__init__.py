"""What the log shows of a week, as figures: nothing here proposes anything."""
