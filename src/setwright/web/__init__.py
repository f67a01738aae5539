"""The workspace: a web application for the coach and a phone page for the person in the gym."""
