"""The sections of the teaching document, one module a subject."""
