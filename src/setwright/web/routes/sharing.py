"""Addresses of links, invitations, handouts, documents and the team."""

from __future__ import annotations

from django.urls import path

import setwright.web.converters  # noqa: F401
from setwright.web.views import documents, handouts, password, share, team, trail

CLIENT = "clients/<uuid:client>"
WEEK = f"{CLIENT}/weeks/<date:monday>"

urlpatterns = [
    path(f"{WEEK}/share", share.share, name="share"),
    path(f"{WEEK}/share/make", share.make, name="share-make"),
    path(f"{WEEK}/share/<uuid:link>/revoke", share.revoke, name="share-revoke"),
    path(f"{WEEK}/handout.<slug:kind>", handouts.handout, name="handout"),
    path(f"{WEEK}/explained.<slug:shape>", handouts.explained, name="explained"),
    path("s/<str:token>", share.shared, name="shared"),
    path("s/<str:token>/week-<int:number>.svg", share.picture, name="shared-picture"),
    path("today/handout.<slug:kind>", handouts.own, name="own-handout"),
    path("today/everything.zip", documents.own_archive, name="own-archive"),
    path("clients/import", documents.import_archive, name="import"),
    path(f"{CLIENT}/documents", documents.documents, name="documents"),
    path(f"{CLIENT}/everything.zip", documents.archive, name="archive"),
    path(f"{CLIENT}/erase", documents.erase, name="erase"),
    path(f"{CLIENT}/trail", trail.of_client, name="trail"),
    path("trail", trail.of_all, name="trail-all"),
    path("team", team.team, name="team"),
    path("team/invite", team.invite, name="team-invite"),
    path("team/invitations/<int:invitation>/withdraw", team.withdraw, name="team-withdraw"),
    path("team/move", team.move, name="team-move"),
    path("team/<uuid:coach>/let-go", team.let_go, name="team-let-go"),
    path("team/<uuid:coach>/take-back", team.take_back, name="team-take-back"),
    path("team/join/<str:token>", team.join_team, name="join-team"),
    path("password", password.password, name="password"),
]
