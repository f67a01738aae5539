"""Addresses of the week board."""

from __future__ import annotations

from django.urls import path

from setwright.web import converters as converters
from setwright.web.views import (
    board,
    board_design,
    board_edits,
    board_versions,
    board_weeks,
)

WEEK = "clients/<uuid:client>/weeks/<monday:monday>"

urlpatterns = [
    path("clients/<uuid:client>/weeks", board_weeks.weeks, name="weeks"),
    path("clients/<uuid:client>/weeks/import", board_weeks.import_week, name="week-import"),
    path(WEEK, board.board, name="board"),
    path(f"{WEEK}/edit", board_edits.edit, name="board-edit"),
    path(f"{WEEK}/undo", board_edits.undo, name="board-undo"),
    path(f"{WEEK}/redo", board_edits.redo, name="board-redo"),
    path(f"{WEEK}/lock", board_edits.lock, name="board-lock"),
    path(f"{WEEK}/send", board_edits.send, name="board-send"),
    path(f"{WEEK}/versions", board_versions.versions, name="board-versions"),
    path(f"{WEEK}/compare", board_versions.compared, name="board-compare"),
    path(f"{WEEK}/put-back", board_versions.put_back, name="board-put-back"),
    path(f"{WEEK}/design", board_design.design, name="board-design"),
    path(f"{WEEK}/design/<uuid:job>", board_design.job, name="board-job"),
    path(f"{WEEK}/design/<uuid:job>/cancel", board_design.cancel, name="board-cancel"),
]
