from __future__ import annotations

import re

import httpx
import pytest

from tests.web.store.people.people import ADA, BEN, DEE, OTHER_PASSWORD
from tests.web.views.opened import follow, send, show
from tests.web.views.people.entered import sign_in_as

PAGE = "/people?who=Ben+Marl"


def _is_checked(page: str, role: str) -> bool:
    return f'value="{role}" checked' in page


def test_a_role_is_given_and_taken_back(staffed: httpx.Client) -> None:
    """The notice undoes it."""
    sign_in_as(staffed, ADA)
    assert _is_checked(show(staffed, PAGE), "print")
    page = follow(staffed, send(staffed, PAGE, "/people/role", {"name": BEN, "role": "view"}))
    assert _is_checked(page, "view")
    assert re.search(r'action="/people/role">.*?name="role" value="print"', page, re.DOTALL)


def test_a_lock_holds_until_it_is_undone(staffed: httpx.Client) -> None:
    """Whoever is locked out cannot sign in, and can again after the undo."""
    sign_in_as(staffed, ADA)
    page = follow(staffed, send(staffed, PAGE, "/people/disable", {"name": BEN}))
    assert "locked out" in page
    assert 'action="/people/enable"' in page
    follow(staffed, send(staffed, PAGE, "/people/enable", {"name": BEN}))
    assert sign_in_as(staffed, BEN).status_code == 303


@pytest.mark.parametrize(
    ("path", "fields", "fault"),
    [("/people/disable", {}, "disabled"), ("/people/role", {"role": "view"}, "role")],
)
def test_the_last_manager_stays(
    staffed: httpx.Client, path: str, fields: dict[str, str], fault: str
) -> None:
    """It is told beside what was pressed."""
    sign_in_as(staffed, ADA)
    answer = send(staffed, PAGE, path, {"name": ADA, **fields}, status=422)
    assert f'id="fault-{fault}"' in answer.text


def test_whoever_gives_their_role_away_goes_to_a_page_they_may_see(staffed: httpx.Client) -> None:
    """The pages of people are closed to them from then on."""
    sign_in_as(staffed, ADA)
    send(staffed, PAGE, "/people/role", {"name": BEN, "role": "manage"})
    answer = send(staffed, PAGE, "/people/role", {"name": ADA, "role": "view"})
    assert "has the role view" in follow(staffed, answer)


def test_a_new_password_is_typed_or_made(staffed: httpx.Client) -> None:
    """Either lets in, and one that is too short is told."""
    sign_in_as(staffed, ADA)
    path = "/people/new-password"
    short = send(staffed, PAGE, path, {"name": DEE, "password": "short"}, status=422)
    assert 'id="fault-password"' in short.text
    send(staffed, PAGE, path, {"name": DEE, "password": OTHER_PASSWORD})
    made = send(staffed, PAGE, path, {"name": BEN}, status=200)
    found = re.search(r'<b class="code">([^<]+)</b>', made.text)
    assert found is not None
    assert sign_in_as(staffed, DEE, OTHER_PASSWORD).status_code == 303
    assert sign_in_as(staffed, BEN, found[1]).status_code == 303


def test_somebody_who_is_not_there_is_told(staffed: httpx.Client) -> None:
    """As any other page that is not."""
    sign_in_as(staffed, ADA)
    show(staffed, "/people?who=Nobody", status=404)
