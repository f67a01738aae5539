"""For programs: clients, documents, logs and decisions as JSON, described by OpenAPI."""
