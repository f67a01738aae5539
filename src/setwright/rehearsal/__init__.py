"""A plan lived through set by set before anyone lifts."""
