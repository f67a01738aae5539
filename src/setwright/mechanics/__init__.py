"""From a declared movement to the shares of the muscle parts."""
