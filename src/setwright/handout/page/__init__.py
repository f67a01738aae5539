"""The handout as one web page that needs no network."""
