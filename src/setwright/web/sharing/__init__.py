"""What leaves the workspace: links, handouts, archives."""
