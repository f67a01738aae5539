"""Every address against everybody who may come by."""

import json
import re

import pytest
from django.db import transaction
from django.test import Client as Browser
from django.urls import get_resolver, reverse

from setwright.web.api.tokens import make_token

from . import access

REFUSED = {401, 403, 404}


def routes(patterns=None, space=""):
    """Name and argument names of every address there is."""
    for one in get_resolver().url_patterns if patterns is None else patterns:
        if hasattr(one, "url_patterns"):
            yield from routes(one.url_patterns, f"{one.namespace}:" if one.namespace else space)
        else:
            yield f"{space}{one.name}", tuple(one.pattern.converters)


ARGUMENTS = dict(routes())


def address(line, things):
    given = {
        name: things.get(f"{line.name} {name}", things.get(name)) for name in ARGUMENTS[line.name]
    }
    return reverse(line.name, kwargs=given) + line.query


def test_every_address_says_here_who_may_open_it():
    said = [line.name for line in (*access.PAGES, *access.NOWHERE, *access.API)]
    assert len(said) == len(set(said))
    assert {name for name, _ in routes()} == set(said)


def answer(account, method, url, data, headers=None):
    """The answer to one visitor; whatever it did is undone."""
    browser = Browser(headers=headers)
    if account is not None and headers is None:
        browser.force_login(account)
    with transaction.atomic():
        if headers is None:
            found = browser.generic(method, url) if method == "GET" else browser.post(url, data)
        else:
            found = browser.generic(method, url, json.dumps(data), "application/json")
        transaction.set_rollback(True)
    return found


def opened(found):
    if found.status_code in (301, 302):
        return not found["Location"].startswith("/sign-in?")
    # The page's own answer of JSON, such as that there is no session today, is an answer.
    return found.status_code not in REFUSED or found["Content-Type"] == "application/json"


@pytest.mark.parametrize("line", [*access.PAGES, *access.NOWHERE], ids=lambda line: line.name)
def test_a_page_opens_for_those_it_is_for_and_nobody_else(line, visitors, things):
    url = address(line, things)
    for method in line.methods.split():
        got = {who: answer(account, method, url, line.data) for who, account in visitors.items()}
        assert {who for who, found in got.items() if opened(found)} == set(line.who), method
        assert all(found.status_code < 500 for found in got.values())


@pytest.mark.parametrize("line", access.API, ids=lambda line: line.name)
def test_the_api_opens_by_a_token_of_those_it_is_for_and_nobody_else(line, visitors, things):
    url = address(line, things)
    for who, account in visitors.items():
        assert answer(account, line.methods, url, line.data, {}).status_code == 401, who
        if account is None:
            continue
        headers = {"Authorization": f"Bearer {make_token(account, 'x')}"}
        status = answer(account, line.methods, url, line.data, headers).status_code
        assert status == 401 if not account.coaches else (status != 404) == (who in line.who), who
        assert status < 500


def test_an_address_that_is_somebody_elses_looks_like_one_that_is_not_there(visitors, things):
    from uuid import uuid4

    line = next(one for one in access.PAGES if one.name == "client")
    theirs = answer(visitors["other coach"], "GET", address(line, things), {})
    nowhere = answer(visitors["other coach"], "GET", address(line, {"client": uuid4()}), {})
    assert theirs.status_code == nowhere.status_code == 404
    assert without_tokens(theirs) == without_tokens(nowhere)


def without_tokens(found):
    return re.sub(rb'name="csrfmiddlewaretoken" value="[^"]+"', b"", found.content)
