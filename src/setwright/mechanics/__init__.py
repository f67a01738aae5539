"""Which parts an exercise trains, out of what it asks of the joints."""
