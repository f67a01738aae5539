"""What a handout says, in words and figures, before any format is chosen."""
