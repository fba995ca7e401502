from __future__ import annotations

import httpx
import pytest

from tests.web.sent import problem_of
from tests.web.store.people.people import ADA, BEN, NAMES, OTHER_PASSWORD, PASSWORD, enter

PATH = "/api/users"


def test_a_manager_adds_and_lists(client: httpx.Client) -> None:
    """Names, roles and visits, and never anything of a password."""
    headers = enter(client, ADA)
    body = {"name": "Eve Dunn", "role": "pack", "password": OTHER_PASSWORD}
    assert client.post(PATH, json=body, headers=headers).json()["role"] == "pack"
    reply = client.get(PATH, headers=headers)
    shown = {user["name"]: user["last_seen"] is not None for user in reply.json()["users"]}
    assert shown == {name: name == ADA for name in (*NAMES.values(), "Eve Dunn")}
    assert "argon2" not in reply.text
    again = client.post(PATH, json={**body, "name": "EVE dunn"}, headers=headers)
    assert problem_of(again)["code"] == "user-taken"


@pytest.mark.parametrize(
    ("change", "code"),
    [
        ({"role": "view"}, "last-manager"),
        ({"disabled": True}, "last-manager"),
        ({"password": "short"}, "password-length"),
        ({"role": "owner"}, "unusable-field"),
        ({"password": OTHER_PASSWORD, "disabled": True}, "last-manager"),
    ],
    ids=str,
)
def test_what_cannot_be_changes_nothing(
    client: httpx.Client, change: dict[str, object], code: str
) -> None:
    """Neither the last manager goes nor half of a change stays."""
    headers = enter(client, ADA)
    reply = client.patch(f"{PATH}/{ADA}", json=change, headers=headers)
    assert problem_of(reply)["code"] == code
    assert client.get(PATH, headers=headers).status_code == 200
    enter(client, ADA, PASSWORD)


def test_a_lock_and_a_new_password(client: httpx.Client) -> None:
    """Both end what is under way; whoever is let in again has the new password."""
    ada, ben = enter(client, ADA), enter(client, BEN)
    change = {"password": OTHER_PASSWORD, "disabled": True}
    assert client.patch(f"{PATH}/{BEN}", json=change, headers=ada).json()["disabled"]
    assert client.get("/api/objects", headers=ben).status_code == 401
    client.patch(f"{PATH}/ben marl", json={"disabled": False}, headers=ada)
    enter(client, BEN, OTHER_PASSWORD)
    unknown = client.patch(f"{PATH}/Nobody", json={"role": "view"}, headers=ada)
    assert problem_of(unknown)["code"] == "not-in-store"
