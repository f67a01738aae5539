"""Whatever a program sends, described or not, the answer is no fault of the server's."""

import pytest
import schemathesis
from django.core.signals import request_finished, request_started
from django.db import close_old_connections
from hypothesis import HealthCheck, Phase, settings
from schemathesis.specs.openapi.checks import response_schema_conformance

from setwright.web.wsgi import application

schema = schemathesis.openapi.from_wsgi("/api/v1/openapi.json", application)

bounded = settings(
    max_examples=30,
    deadline=None,
    derandomize=True,
    database=None,
    phases=[Phase.explicit, Phase.generate],
    suppress_health_check=list(HealthCheck),
)


@pytest.fixture(autouse=True)
def one_connection():
    """A request leaves the test's connection open, as with Django's own client."""
    for signal in (request_started, request_finished):
        signal.disconnect(close_old_connections)
    yield
    for signal in (request_started, request_finished):
        signal.connect(close_old_connections)


@bounded
@schema.parametrize()
def test_no_request_makes_the_server_fail(case, week, token):
    """Half of the requests are about a client and a week that are there."""
    if "client" in case.path_parameters and case.path_parameters["client"][-1] in "01234567":
        case.path_parameters["client"] = str(week.client.uuid)
        if "monday" in case.path_parameters:
            case.path_parameters["monday"] = week.starts.isoformat()
    case.headers = {"Authorization": f"Bearer {token}", "Accept-Encoding": "identity"}
    response = case.call()
    case.validate_response(
        response, checks=[schemathesis.checks.not_a_server_error, response_schema_conformance]
    )
