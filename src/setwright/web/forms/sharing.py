"""Forms of what leaves the workspace."""

from __future__ import annotations

from typing import cast

from django import forms
from django.contrib.auth.password_validation import validate_password
from django.http import QueryDict

from setwright.web.models import Account, Client, Organisation
from setwright.web.sharing.links import DAYS_LEAST, DAYS_MOST, DAYS_USUAL
from setwright.web.sharing.reading import MOST_PACKED

COACHING = (Account.Role.OWNER, Account.Role.COACH)


class LinkForm(forms.Form):
    """For how long a link is open."""

    days = forms.IntegerField(
        min_value=DAYS_LEAST,
        max_value=DAYS_MOST,
        initial=DAYS_USUAL,
        label="Days until the link ends",
        help_text=f"{DAYS_LEAST} to {DAYS_MOST}.",
        widget=forms.NumberInput(attrs={"inputmode": "numeric"}),
    )


class MoveForm(forms.Form):
    """A client and the coach who takes over."""

    client = forms.ModelChoiceField(Client.objects.none(), label="Client", empty_label=None)
    coach = forms.ModelChoiceField(Account.objects.none(), label="To", empty_label=None)

    def __init__(self, organisation: Organisation, data: QueryDict | None = None) -> None:
        super().__init__(data)
        clients = organisation.clients.select_related("coach").order_by("name")
        cast("forms.ModelChoiceField[Client]", self.fields["client"]).queryset = clients
        self.fields["client"].label_from_instance = _with_coach  # type: ignore[attr-defined]
        coaches = organisation.accounts.filter(role__in=COACHING, is_active=True).order_by("name")
        cast("forms.ModelChoiceField[Account]", self.fields["coach"]).queryset = coaches


def _with_coach(client: Client) -> str:
    return f"{client.name} (now with {client.coach.name})"


class ArchiveForm(forms.Form):
    """An archive to read back."""

    file = forms.FileField(
        label="Archive",
        help_text="A zip file of a client's folder, from here or from the command line; "
        f"at most {MOST_PACKED // 1_000_000} MB.",
        widget=forms.FileInput(attrs={"accept": ".zip,application/zip"}),
    )


class EraseForm(forms.Form):
    """The person's name, typed once more."""

    name = forms.CharField(
        max_length=60, label="Name", widget=forms.TextInput(attrs={"autocomplete": "off"})
    )

    def __init__(self, client: Client, data: QueryDict | None = None) -> None:
        super().__init__(data)
        self._wanted = client.name
        self.fields["name"].help_text = f"Type {client.name} to erase for good."

    def clean_name(self) -> str:
        """As it stands, letter by letter."""
        typed: str = self.cleaned_data["name"]
        if typed.strip() != self._wanted.strip():
            raise forms.ValidationError("That is not the name as it is kept.")
        return typed


class TokenForm(forms.Form):
    """What a token is for."""

    name = forms.CharField(
        max_length=60,
        label="What the program is called",
        widget=forms.TextInput(attrs={"autocomplete": "off"}),
    )


class PasswordForm(forms.Form):
    """The password that is, and the one to be."""

    old = forms.CharField(
        max_length=200,
        strip=False,
        label="Your password now",
        widget=forms.PasswordInput(attrs={"autocomplete": "current-password"}),
    )
    new = forms.CharField(
        max_length=200,
        strip=False,
        label="New password",
        help_text="At least 12 characters.",
        widget=forms.PasswordInput(attrs={"autocomplete": "new-password"}),
    )

    def __init__(self, account: Account, data: QueryDict | None = None) -> None:
        super().__init__(data)
        self._account = account

    def clean_old(self) -> str:
        """The right one."""
        old: str = self.cleaned_data["old"]
        if not self._account.check_password(old):
            raise forms.ValidationError("That is not your password.")
        return old

    def clean_new(self) -> str:
        """Neither short nor common nor the email itself."""
        new: str = self.cleaned_data["new"]
        validate_password(new, self._account)
        return new
