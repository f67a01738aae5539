"""Running the workspace: start, stop, logs, backup."""
