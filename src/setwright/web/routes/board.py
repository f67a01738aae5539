"""Addresses of the week board."""

from __future__ import annotations

from django.urls import path

from setwright.web import converters as converters
from setwright.web.views import (
    board,
    board_design,
    board_edits,
    board_steps,
    board_versions,
    board_weeks,
)

WEEK = "clients/<uuid:client>/weeks/<monday:monday>"

urlpatterns = [
    path("clients/<uuid:client>/weeks", board_weeks.weeks, name="weeks"),
    path("clients/<uuid:client>/weeks/import", board_weeks.import_week, name="week-import"),
    path(WEEK, board.board, name="board"),
    path(f"{WEEK}/edit", board_edits.edit, name="board-edit"),
    path(f"{WEEK}/undo", board_steps.undo, name="board-undo"),
    path(f"{WEEK}/redo", board_steps.redo, name="board-redo"),
    path(f"{WEEK}/lock", board_steps.lock, name="board-lock"),
    path(f"{WEEK}/send", board_steps.send, name="board-send"),
    path(f"{WEEK}/versions", board_versions.versions, name="board-versions"),
    path(f"{WEEK}/compare", board_versions.compared, name="board-compare"),
    path(f"{WEEK}/put-back", board_versions.put_back, name="board-put-back"),
    path(f"{WEEK}/design", board_design.design, name="board-design"),
    path(f"{WEEK}/design/<uuid:job>", board_design.job, name="board-job"),
    path(f"{WEEK}/design/<uuid:job>/cancel", board_design.cancel, name="board-cancel"),
]
