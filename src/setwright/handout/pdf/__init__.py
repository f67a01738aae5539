"""The printed handout, set by Typst."""
