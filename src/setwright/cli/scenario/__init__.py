"""The demo scenario: invented people in an invented gym."""
