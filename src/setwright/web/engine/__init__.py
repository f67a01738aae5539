"""The engine's functions over what the database keeps."""
