"""An intake as text or file."""

from __future__ import annotations

from typing import Any

from django import forms

MOST = 200_000


class IntakeTextForm(forms.Form):
    """The document of an intake, pasted or uploaded."""

    base = forms.IntegerField(required=False, widget=forms.HiddenInput)
    file = forms.FileField(required=False, label="A file", help_text="YAML, UTF-8.")
    text = forms.CharField(
        required=False,
        max_length=MOST,
        strip=False,
        label="Or the text",
        widget=forms.Textarea(attrs={"rows": 24, "spellcheck": "false", "class": "code"}),
    )

    def clean(self) -> dict[str, Any]:
        """One text out of the two; the file goes first."""
        data: dict[str, Any] = super().clean() or {}
        file = data.get("file")
        if file is None:
            data["document"] = (data.get("text") or "").replace("\r\n", "\n")
        elif file.size > MOST:
            raise forms.ValidationError(f"A file of up to {MOST:,} bytes.")
        else:
            try:
                data["document"] = file.read().decode("utf-8-sig").replace("\r\n", "\n")
            except UnicodeDecodeError:
                raise forms.ValidationError("The file is no UTF-8 text.") from None
        if not data["document"].strip():
            raise forms.ValidationError("Choose a file, or paste the document.")
        return data


class AnswersFileForm(forms.Form):
    """The table of a form that a client filled in."""

    file = forms.FileField(label="The answers", help_text="A CSV file or a workbook (XLSX).")

    def clean_file(self) -> Any:
        """Not too large."""
        file = self.cleaned_data["file"]
        if file.size > MOST:
            raise forms.ValidationError(f"A file of up to {MOST:,} bytes.")
        return file
