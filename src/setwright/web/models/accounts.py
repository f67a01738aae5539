"""Organisations and the people who sign in."""

from __future__ import annotations

import uuid
from typing import Any, ClassVar

from django.contrib.auth.base_user import AbstractBaseUser, BaseUserManager
from django.db import models


class Organisation(models.Model):
    """A gym or a practice: its coaches and their clients. Nothing crosses its border."""

    uuid = models.UUIDField(default=uuid.uuid4, unique=True, editable=False)
    name = models.CharField(max_length=80)
    made_at = models.DateTimeField(auto_now_add=True)

    def __str__(self) -> str:
        return self.name


class AccountManager(BaseUserManager["Account"]):
    """Makes accounts."""

    def create(self, *, password: str | None = None, **fields: Any) -> Account:
        """Make an account; without a password it is entered by an invitation only."""
        email = fields.pop("email", None)
        account = self.model(email=email.strip().lower() if email else None, **fields)
        if password is None:
            account.set_unusable_password()
        else:
            account.set_password(password)
        account.save(using=self._db)
        return account


class Account(AbstractBaseUser):
    """Someone who signs in: the owner, a coach, or a client on the phone.

    Attributes:
        email: of owner and coaches; a client has none and enters by an invitation.
        role: an owner is a coach who also manages the organisation's coaches.
    """

    class Role(models.TextChoices):
        """What an account may do."""

        OWNER = "owner", "owner"
        COACH = "coach", "coach"
        CLIENT = "client", "client"

    uuid = models.UUIDField(default=uuid.uuid4, unique=True, editable=False)
    organisation = models.ForeignKey(
        Organisation, on_delete=models.CASCADE, related_name="accounts"
    )
    email = models.EmailField(max_length=200, unique=True, null=True, blank=True)
    name = models.CharField(max_length=60)
    role = models.CharField(max_length=10, choices=Role.choices)
    is_active = models.BooleanField(default=True)
    made_at = models.DateTimeField(auto_now_add=True)

    objects: ClassVar[AccountManager] = AccountManager()

    USERNAME_FIELD = "email"
    REQUIRED_FIELDS: ClassVar[list[str]] = []

    @property
    def coaches(self) -> bool:
        """Whether this is a coach; the owner is one."""
        return self.role in (self.Role.OWNER, self.Role.COACH)

    @property
    def owns(self) -> bool:
        """Whether this is the owner of the organisation."""
        return self.role == self.Role.OWNER

    def __str__(self) -> str:
        return self.name
