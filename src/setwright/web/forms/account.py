"""Forms of the way in."""

from __future__ import annotations

from django import forms
from django.contrib.auth.password_validation import validate_password

from setwright.web.models import Account


class NewAccountForm(forms.Form):
    """Name, email and password of someone new."""

    name = forms.CharField(
        max_length=60, widget=forms.TextInput(attrs={"autocomplete": "name"}), label="Your name"
    )
    email = forms.EmailField(
        max_length=200, widget=forms.EmailInput(attrs={"autocomplete": "username"}), label="Email"
    )
    password = forms.CharField(
        max_length=200,
        strip=False,
        widget=forms.PasswordInput(attrs={"autocomplete": "new-password"}),
        label="Password",
        help_text="At least 12 characters.",
    )

    def clean_email(self) -> str:
        """One account an email."""
        email: str = self.cleaned_data["email"].strip().lower()
        if Account.objects.filter(email=email).exists():
            raise forms.ValidationError("This email has an account already.")
        return email

    def clean_password(self) -> str:
        """Neither short nor common nor the email itself."""
        password: str = self.cleaned_data["password"]
        account = Account(
            email=self.cleaned_data.get("email"), name=self.cleaned_data.get("name", "")
        )
        validate_password(password, account)
        return password


class StartForm(NewAccountForm):
    """The first account of a workspace."""

    organisation = forms.CharField(max_length=80, label="Name of your gym or practice")
    code = forms.CharField(
        max_length=60,
        label="Start code",
        help_text="The server printed it when it started.",
        widget=forms.TextInput(attrs={"autocomplete": "one-time-code"}),
    )
    field_order = ("code", "organisation", "name", "email", "password")


class SignInForm(forms.Form):
    """Email and password."""

    email = forms.EmailField(
        max_length=200, widget=forms.EmailInput(attrs={"autocomplete": "username"}), label="Email"
    )
    password = forms.CharField(
        max_length=200,
        strip=False,
        widget=forms.PasswordInput(attrs={"autocomplete": "current-password"}),
        label="Password",
    )
