"""Addresses of the roster, the client, the intake and the review."""

from __future__ import annotations

from django.urls import path

from setwright.web import converters as _days  # noqa: F401
from setwright.web.views import (
    client,
    intake,
    intake_import,
    intake_versions,
    notes,
    review,
    roster,
)

CLIENT = "clients/<uuid:client>"
INTAKE = f"{CLIENT}/intake"
REVIEW = f"{CLIENT}/review"

urlpatterns = [
    path("clients", roster.roster, name="roster"),
    path("clients/add", roster.add, name="client-add"),
    path(CLIENT, client.client_view, name="client"),
    path(f"{CLIENT}/archive", roster.archive, name="client-archive"),
    path(f"{CLIENT}/restore", roster.restore, name="client-restore"),
    path(f"{CLIENT}/notes", notes.save, name="client-notes"),
    path(f"{CLIENT}/pictures/<slug:name>.svg", client.picture, name="client-picture"),
    path(f"{CLIENT}/files/<path:path>", client.file, name="client-file"),
    path(INTAKE, intake.intake, name="intake"),
    path(f"{INTAKE}/document", intake_versions.document, name="intake-document"),
    path(f"{INTAKE}/answers", intake_import.from_answers, name="intake-import"),
    path(f"{INTAKE}/versions/<int:number>", intake_versions.version, name="intake-version"),
    path(
        f"{INTAKE}/versions/<int:number>/put-back",
        intake_versions.put_back,
        name="intake-put-back",
    ),
    path(REVIEW, review.review_page, name="review"),
    path(f"{REVIEW}/<monday:monday>/decide", review.decide, name="review-decide"),
    path(f"{REVIEW}/<monday:monday>/send", review.send, name="review-send"),
    path(f"{REVIEW}/<monday:monday>/strike", review.strike, name="review-strike"),
]
