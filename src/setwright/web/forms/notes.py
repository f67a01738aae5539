"""The coach's notes of a client."""

from __future__ import annotations

from hashlib import sha256

from django import forms

MOST = 20_000


def state_of(notes: str) -> str:
    """A short mark of notes as they stand, to tell whether they were changed meanwhile."""
    return sha256(notes.encode()).hexdigest()[:16]


class NotesForm(forms.Form):
    """Notes, and the mark of those they were written over."""

    notes = forms.CharField(max_length=MOST, required=False, strip=False, label="Notes")
    state = forms.CharField(max_length=16, required=False)

    def clean_notes(self) -> str:
        """Lines end as everywhere else, whatever the browser sent."""
        notes: str = self.cleaned_data["notes"]
        return notes.replace("\r\n", "\n")
