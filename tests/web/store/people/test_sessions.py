from __future__ import annotations

import json
from pathlib import Path

import httpx
import pytest

from service.store.people.role import Role
from tests.web.sent import problem_of
from tests.web.store.people.people import (
    ADA,
    BEN,
    DEE,
    OTHER_PASSWORD,
    PASSWORD,
    add_token,
    as_browser,
    enter,
)

PATH = "/api/sessions"


def test_signing_in_and_out(client: httpx.Client) -> None:
    """The cookie is new each time, says who is here, and is worth nothing afterwards."""
    first, second = enter(client, "dee VANE"), enter(client, DEE)
    assert first["Cookie"] != second["Cookie"]
    view = client.get(f"{PATH}/current", headers=first).json()
    assert view == {"name": DEE, "role": "view", "way": "session", "scopes": ["view"]}
    reply = client.delete(f"{PATH}/current", headers=first)
    assert reply.json()["way"] == "nobody"
    assert 'underlid=""' in reply.headers["set-cookie"]
    assert client.get(f"{PATH}/current", headers=first).status_code == 401
    assert client.get(f"{PATH}/current", headers=second).status_code == 200


def test_all_that_is_wrong_gets_the_same_answer(client: httpx.Client) -> None:
    """Byte for byte, so that nobody learns which names there are; a locked one is no exception."""
    headers = enter(client, ADA)
    client.patch(f"/api/users/{DEE}", json={"disabled": True}, headers=headers)
    wrong = [(BEN, OTHER_PASSWORD), ("Nobody Here", PASSWORD), (DEE, PASSWORD), (BEN, "x" * 500)]
    replies = [
        client.post(PATH, json={"name": name, "password": password}) for name, password in wrong
    ]
    assert {reply.status_code for reply in replies} == {401}
    assert len({reply.content for reply in replies}) == 1
    assert len({tuple(sorted(reply.headers.keys())) for reply in replies}) == 1
    assert problem_of(replies[0])["code"] == "sign-in-failed"
    assert "set-cookie" not in replies[0].headers


def test_five_tries_a_minute(client: httpx.Client) -> None:
    """Then even the right password has to wait, and it is said for how long."""
    for _ in range(5):
        client.post(PATH, json={"name": BEN, "password": OTHER_PASSWORD})
    reply = client.post(PATH, json={"name": BEN, "password": PASSWORD})
    assert problem_of(reply)["code"] == "too-often"
    assert reply.headers["retry-after"] == "60"


@pytest.mark.parametrize("path", [PATH, "/api/pairings/finish"])
def test_whoever_is_outside_sends_little(client: httpx.Client, path: str) -> None:
    """A body too long for a name and a password is cut off, and the limit is said."""
    body = {"name": "x" * 70_000, "code": ""}
    streamed = (part.encode() for part in (json.dumps(body), " " * 70_000))
    headers = {"Content-Type": "application/json"}
    replies = [
        client.post(path, json=body),
        client.post(path, content=streamed, headers=headers),
    ]
    for reply in replies:
        problem = problem_of(reply)
        assert (problem["code"], "65536" in problem["detail"]) == ("too-large", True)


def test_a_foreign_page_signs_nobody_in(client: httpx.Client) -> None:
    """Else somebody could work in the name of whoever set the trap."""
    body = {"name": ADA, "password": PASSWORD}
    reply = client.post(PATH, json=body, headers={"Origin": "http://evil.example"})
    assert problem_of(reply)["code"] == "foreign-page"
    assert "set-cookie" not in reply.headers


def test_ones_own_password(client: httpx.Client) -> None:
    """Every session ends, this device gets a new one, and the old password is worth nothing."""
    here = enter(client, DEE)
    body = {"current": PASSWORD, "new": OTHER_PASSWORD}
    wrong = client.post(f"{PATH}/password", json={**body, "current": "x"}, headers=here)
    assert problem_of(wrong)["code"] == "sign-in-failed"
    reply = client.post(f"{PATH}/password", json=body, headers=here)
    assert reply.status_code == 200
    assert client.get(f"{PATH}/current", headers=here).status_code == 401
    new = as_browser(client, reply)
    assert client.get(f"{PATH}/current", headers=new).json()["name"] == DEE
    enter(client, DEE, OTHER_PASSWORD)


def test_a_program_has_no_session(client: httpx.Client, folder: Path) -> None:
    """A token, which may be of few scopes, changes no password and ends no session."""
    headers = add_token(folder, ADA, {Role.VIEW})
    body = {"current": PASSWORD, "new": OTHER_PASSWORD}
    replies = [
        client.delete(f"{PATH}/current", headers=headers),
        client.post(f"{PATH}/password", json=body, headers=headers),
    ]
    assert [problem_of(reply)["code"] for reply in replies] == ["sign-in-needed"] * 2
