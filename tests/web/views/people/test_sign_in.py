from __future__ import annotations

import httpx
import pytest

from service.web.views.people.sign_in import read_way_back
from tests.web.store.people.people import ADA, DEE, PASSWORD
from tests.web.views.opened import HTML, send, show
from tests.web.views.people.entered import form_token_of, sign_in_as

PAGE = "/sign-in"


def test_whoever_signs_in_goes_on_where_they_came_from(staffed: httpx.Client) -> None:
    """The page that sent them away is the one they get, with its query."""
    away = staffed.get("/containers?after=", headers=HTML)
    page = away.headers["location"]
    assert page == "/sign-in?to=%2Fcontainers%3Fafter%3D"
    fields = {"name": DEE.lower(), "password": PASSWORD, "to": "/containers?after="}
    answer = send(staffed, page, PAGE, fields)
    assert answer.headers["location"] == "/containers?after="
    assert "Signed in as <b>Dee Vane</b>" in show(staffed, "/containers")


def test_nobody_learns_who_there_is(staffed: httpx.Client) -> None:
    """A wrong name and a wrong password get one answer, and the frame names no one."""
    answers = []
    for name in (ADA, "Nobody There"):
        answer = send(staffed, PAGE, PAGE, {"name": name, "password": "x"}, status=422)
        answers.append(answer.text.replace(f'value="{name}"', ""))
    assert answers[0] == answers[1]
    assert 'id="fault-password"' in answers[0]
    assert "Ada Quill</b>" not in answers[0]
    assert "/find" not in answers[0]


def test_tries_are_limited(staffed: httpx.Client) -> None:
    """The sixth of a minute is told to wait, even with the right password."""
    for _ in range(5):
        send(staffed, PAGE, PAGE, {"name": DEE, "password": "x"}, status=422)
    answer = send(staffed, PAGE, PAGE, {"name": DEE, "password": PASSWORD}, status=429)
    assert answer.headers["retry-after"] == "60"
    assert "Wait a minute" in answer.text


def test_signing_out_ends_the_session(staffed: httpx.Client) -> None:
    """The secret of before does nothing any more."""
    sign_in_as(staffed, DEE)
    secret = staffed.cookies["underlid"]
    answer = send(staffed, "/you", "/sign-out", {})
    assert answer.headers["location"] == PAGE
    old = staffed.get("/you", headers={**HTML, "Cookie": f"underlid={secret}"})
    assert old.status_code == 303


def test_a_form_of_another_page_signs_nobody_in(staffed: httpx.Client) -> None:
    """It holds no token of this service."""
    fields = {"name": DEE, "password": PASSWORD}
    answer = staffed.post(PAGE, data=fields, headers=HTML)
    assert answer.status_code == 403
    assert "underlid" not in answer.cookies


def test_nobody_is_asked_in_clear(staffed: httpx.Client) -> None:
    """Over plain http of a network neither a password nor a code is asked for, nor taken."""
    network = {"Host": "cards.museum.example", "Origin": "http://cards.museum.example", **HTML}
    for page in (PAGE, "/pair"):
        asked = staffed.get(page, headers=network).text
        assert "begins with https" in asked
        assert "<form" not in asked
    token = form_token_of(show(staffed, PAGE))
    fields = {"name": DEE, "password": PASSWORD, "form_token": token}
    answer = staffed.post(PAGE, data=fields, headers=network)
    assert answer.status_code == 403
    assert "underlid" not in answer.cookies


def test_without_users_nobody_is_asked(client: httpx.Client) -> None:
    """The page says so instead of asking for a password that nobody has."""
    page = show(client, PAGE)
    assert "Nobody has to sign in yet" in page
    assert 'type="password"' not in page


@pytest.mark.parametrize(
    ("to", "path"),
    [
        ("/containers/B-027?x=1", "/containers/B-027?x=1"),
        ("//elsewhere.example", "/"),
        ("https://elsewhere.example", "/"),
        ("/\\elsewhere.example", "/"),
        ("/\t/elsewhere.example", "/"),
        ("", "/"),
    ],
)
def test_the_way_back_stays_here(to: str, path: str) -> None:
    """Whatever stands in the address, nobody is sent to another site."""
    assert read_way_back(to) == path
