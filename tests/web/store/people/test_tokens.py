from __future__ import annotations

from pathlib import Path

import httpx

from service.store.people.role import Role
from tests.web.sent import problem_of
from tests.web.store.people.people import ADA, BEN, DEE, add_token, enter

PATH = "/api/tokens"


def test_a_token_is_shown_once(client: httpx.Client) -> None:
    """Its secret works from then on and stands in no list."""
    headers = enter(client, BEN)
    body = {"name": "label station", "scopes": ["print", "view"]}
    made = client.post(PATH, json=body, headers=headers).json()
    assert made["token"]["scopes"] == ["view", "print"]
    bearer = {"Authorization": f"Bearer {made['secret']}"}
    who = client.get("/api/sessions/current", headers=bearer).json()
    assert (who["name"], who["way"], who["scopes"]) == (BEN, "token", ["view", "print"])
    listed = client.get(PATH, headers=headers)
    assert [each["name"] for each in listed.json()["tokens"]] == ["label station"]
    assert made["secret"] not in listed.text


def test_a_scope_above_the_role_is_refused(client: httpx.Client) -> None:
    """Whoever views makes no token that packs."""
    body = {"name": "sly", "scopes": ["view", "pack"]}
    reply = client.post(PATH, json=body, headers=enter(client, DEE))
    assert problem_of(reply)["code"] == "token-scope"


def test_a_token_makes_nothing_that_may_more(client: httpx.Client, folder: Path) -> None:
    """Neither another token nor a pairing, whatever its user could."""
    headers = add_token(folder, ADA, {Role.VIEW})
    body = {"name": "sly", "scopes": ["manage"]}
    for path, sent in ((PATH, body), ("/api/pairings", None)):
        assert client.post(path, json=sent, headers=headers).status_code == 401


def test_one_takes_back_ones_own(client: httpx.Client, folder: Path) -> None:
    """Those of others are neither seen nor taken back, but by a manager."""
    add_token(folder, BEN, {Role.VIEW})
    dee, ada = enter(client, DEE), enter(client, ADA)
    assert client.get(PATH, headers=dee).json()["tokens"] == []
    assert problem_of(client.delete(f"{PATH}/1", headers=dee))["code"] == "not-allowed"
    assert len(client.get(PATH, headers=ada).json()["tokens"]) == 1
    assert client.delete(f"{PATH}/1", headers=enter(client, BEN)).json()["revoked_at"]
    assert client.delete(f"{PATH}/1", headers=ada).status_code == 200
    assert problem_of(client.delete(f"{PATH}/7", headers=ada))["code"] == "not-in-store"
