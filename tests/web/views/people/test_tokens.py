from __future__ import annotations

import re

import httpx

from tests.web.store.people.people import ADA, CASS
from tests.web.views.opened import follow, send, show
from tests.web.views.people.entered import sign_in_as

PAGE, REVOKE = "/people/tokens", "/people/tokens/revoke"


def _make(client: httpx.Client) -> str:
    fields = {"name": "nightly export", "scopes": "view"}
    found = re.search(r"underlid_[\w-]+", send(client, PAGE, PAGE, fields, status=201).text)
    assert found is not None
    return found[0]


def test_a_token_works_until_it_is_revoked(staffed: httpx.Client) -> None:
    """It is shown once; revoked, it does nothing any more and stays in the list."""
    sign_in_as(staffed, CASS)
    secret = _make(staffed)
    assert secret not in show(staffed, PAGE)
    program = {"Authorization": f"Bearer {secret}", "Cookie": ""}
    assert staffed.get("/api/containers", headers=program).status_code == 200
    page = follow(staffed, send(staffed, PAGE, REVOKE, {"token": "1"}))
    assert "revoked" in page
    assert staffed.get("/api/containers", headers=program).status_code == 401


def test_only_ones_own_work_is_offered(staffed: httpx.Client) -> None:
    """What is sent all the same is refused beside the boxes, and so is nothing at all."""
    sign_in_as(staffed, CASS)
    page = show(staffed, PAGE)
    assert 'value="pack"' in page
    assert 'value="print"' not in page
    more = send(staffed, PAGE, PAGE, {"name": "x", "scopes": "print"}, status=422)
    assert 'id="fault-scopes"' in more.text
    none = send(staffed, PAGE, PAGE, {"name": "x"}, status=422)
    assert "Tick at least one" in none.text


def test_a_token_says_what_it_is_for(staffed: httpx.Client) -> None:
    """What was ticked stays ticked."""
    sign_in_as(staffed, CASS)
    page = send(staffed, PAGE, PAGE, {"name": " ", "scopes": "pack"}, status=422).text
    assert 'id="fault-name"' in page
    assert 'value="pack" checked' in page


def test_those_of_others_are_not_shown_here(staffed: httpx.Client) -> None:
    """Nor revoked, not even by a manager, who has the API for that."""
    sign_in_as(staffed, CASS)
    _make(staffed)
    sign_in_as(staffed, ADA)
    assert "nightly export</b>" not in show(staffed, PAGE)
    send(staffed, PAGE, REVOKE, {"token": "1"}, status=403)


def test_without_users_there_are_none(client: httpx.Client) -> None:
    """Programs of this machine need none."""
    assert "need no token" in show(client, PAGE)
