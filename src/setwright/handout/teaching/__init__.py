"""The document to teach from: content first, then one writer a format."""
