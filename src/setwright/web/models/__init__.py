"""What the workspace keeps."""

from setwright.web.models.access import ApiToken, Attempt, Invitation, ShareLink
from setwright.web.models.accounts import Account, Organisation
from setwright.web.models.clients import Client, IntakeVersion
from setwright.web.models.logs import DecisionEntry, LogEntry
from setwright.web.models.trail import TrailEntry
from setwright.web.models.weeks import DesignJob, PlanVersion, Week

__all__ = [
    "Account",
    "ApiToken",
    "Attempt",
    "Client",
    "DecisionEntry",
    "DesignJob",
    "IntakeVersion",
    "Invitation",
    "LogEntry",
    "Organisation",
    "PlanVersion",
    "ShareLink",
    "TrailEntry",
    "Week",
]
