"""Tables of sets, as people keep them, read into records of the log; what is unclear is asked."""
