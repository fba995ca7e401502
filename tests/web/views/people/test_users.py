from __future__ import annotations

import re

import httpx

from tests.web.store.people.people import ADA, CASS, NAMES, OTHER_PASSWORD, PASSWORD
from tests.web.views.opened import HTML, follow, send, show
from tests.web.views.people.entered import sign_in_as

PAGE, ADD = "/people", "/people/add"


def test_everybody_is_listed_for_managers_alone(staffed: httpx.Client) -> None:
    """Who there is, and when they were last here; the foot leads here for managers only."""
    sign_in_as(staffed, CASS)
    assert staffed.get(PAGE, headers=HTML).status_code == 403
    assert 'href="/people"' not in show(staffed, "/you")
    sign_in_as(staffed, ADA)
    page = show(staffed, PAGE)
    assert all(name in page for name in NAMES.values())
    assert "never here yet" in page
    assert 'href="/people"' in show(staffed, "/you")


def test_a_made_password_is_shown_once_and_lets_in(staffed: httpx.Client) -> None:
    """It stands on the page that answers and nowhere after."""
    sign_in_as(staffed, ADA)
    answer = send(staffed, PAGE, ADD, {"name": "Eve Holt", "role": "view"}, status=201)
    found = re.search(r'<b class="code">([^<]+)</b>', answer.text)
    assert found is not None
    assert found[1] not in show(staffed, PAGE)
    assert sign_in_as(staffed, "Eve Holt", found[1]).status_code == 303


def test_faults_stand_beside_their_fields(staffed: httpx.Client) -> None:
    """A name that is taken, a short password; what was typed stays, the password does not."""
    sign_in_as(staffed, ADA)
    taken = {"name": CASS, "role": "print", "password": PASSWORD}
    page = send(staffed, PAGE, ADD, taken, status=422).text
    assert 'id="fault-name"' in page
    assert 'value="print" checked' in page
    assert PASSWORD not in page
    short = {"name": "Eve Holt", "role": "view", "password": "short"}
    assert 'id="fault-password"' in send(staffed, PAGE, ADD, short, status=422).text


def test_the_first_user_is_told_what_changes(client: httpx.Client) -> None:
    """Before and after: from then on everybody signs in, and sharing is another step."""
    page = show(client, PAGE)
    assert "everybody signs in" in page
    assert "python3 -m service share" in page
    answer = send(client, PAGE, ADD, {"name": ADA, "role": "manage", "password": OTHER_PASSWORD})
    away = client.get(answer.headers["location"], headers=HTML)
    assert "Begin yourself" in follow(client, away)


def test_the_first_user_manages(client: httpx.Client) -> None:
    """Another role is refused in words, and everything stays open."""
    fields = {"name": CASS, "role": "pack", "password": PASSWORD}
    assert 'id="fault-role"' in send(client, PAGE, ADD, fields, status=422).text
    assert "Nobody has to sign in yet" in show(client, PAGE)
