"""The documents a coach writes and reads: intake and plan."""
