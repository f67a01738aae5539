"""The workspace filled with invented people, for looking around."""
