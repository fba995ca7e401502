from __future__ import annotations

import httpx

from tests.web.store.people.people import DEE, OTHER_PASSWORD, PASSWORD
from tests.web.views.opened import follow, send, show
from tests.web.views.people.entered import sign_in_as

PAGE = "/people/password"


def test_a_password_is_changed_by_whoever_knows_it(staffed: httpx.Client) -> None:
    """This browser stays signed in, and the new one is asked for from then on."""
    sign_in_as(staffed, DEE)
    fields = {"current": PASSWORD, "password": OTHER_PASSWORD}
    page = follow(staffed, send(staffed, PAGE, PAGE, fields))
    assert "You have a new password" in page
    assert "Signed in as <b>Dee Vane</b>" in page
    assert sign_in_as(staffed, DEE, OTHER_PASSWORD).status_code == 303


def test_faults_stand_beside_their_fields(staffed: httpx.Client) -> None:
    """The one that is wrong, the one that is too short; tries are limited here, too."""
    sign_in_as(staffed, DEE)
    wrong = {"current": "x", "password": OTHER_PASSWORD}
    assert 'id="fault-current"' in send(staffed, PAGE, PAGE, wrong, status=422).text
    short = {"current": PASSWORD, "password": "short"}
    assert 'id="fault-password"' in send(staffed, PAGE, PAGE, short, status=422).text
    for _ in range(2):
        send(staffed, PAGE, PAGE, wrong, status=422)
    send(staffed, PAGE, PAGE, wrong, status=429)


def test_without_users_nobody_has_one(client: httpx.Client) -> None:
    """The page says so."""
    assert 'type="password"' not in show(client, PAGE)
