"""From rehearsed sets to fractional sets and expected growth."""
