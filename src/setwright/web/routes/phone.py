"""Addresses of the client in the gym."""

from __future__ import annotations

from django.urls import path

from setwright.web.views import phone_files, phone_join, phone_today

urlpatterns = [
    path("clients/<uuid:client>/invite", phone_join.invite, name="invite"),
    path("join/<str:token>", phone_join.join, name="join"),
    path("today", phone_today.today, name="today"),
    path("today/record", phone_today.log_record, name="log-record"),
    path("today/sync", phone_today.sync, name="sync"),
    path("today/document", phone_today.day_document, name="day-document"),
    path("today/next", phone_today.next_set, name="next-set"),
    path("today/worker.js", phone_files.worker, name="phone-worker"),
    path("today/manifest.json", phone_files.manifest, name="phone-manifest"),
    path("today/icon-<int:size>.png", phone_files.icon, name="phone-icon"),
    path("today/app/<slug:of_version>/<slug:name>.js", phone_files.module, name="phone-module"),
]
