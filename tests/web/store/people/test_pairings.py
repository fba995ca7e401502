from __future__ import annotations

import httpx

from tests.web.sent import problem_of
from tests.web.store.people.people import ADA, DEE, as_browser, enter

PATH = "/api/pairings"


def test_a_telephone_comes_in_as_whoever_made_the_code(client: httpx.Client) -> None:
    """Once, however the code is typed, and the cookie is its own."""
    headers = enter(client, DEE)
    code = client.post(PATH, headers=headers).json()["code"]
    body = {"code": code.lower(), "device": "store telephone"}
    reply = client.post(f"{PATH}/finish", json=body)
    assert reply.json()["name"] == DEE
    telephone = as_browser(client, reply)
    assert telephone["Cookie"] != headers["Cookie"]
    assert client.get("/api/sessions/current", headers=telephone).json()["name"] == DEE
    again = client.post(f"{PATH}/finish", json=body)
    assert problem_of(again)["code"] == "pairing-failed"
    assert "set-cookie" not in again.headers


def test_a_lock_ends_a_code(client: httpx.Client) -> None:
    """It is as if nobody had made it."""
    code = client.post(PATH, headers=enter(client, DEE)).json()["code"]
    change = {"disabled": True}
    client.patch(f"/api/users/{DEE}", json=change, headers=enter(client, ADA))
    reply = client.post(f"{PATH}/finish", json={"code": code})
    assert problem_of(reply)["code"] == "pairing-failed"


def test_codes_are_not_guessed(client: httpx.Client) -> None:
    """An address may try five a minute."""
    replies = [client.post(f"{PATH}/finish", json={"code": str(n)}) for n in range(6)]
    assert [reply.status_code for reply in replies] == [401] * 5 + [429]
