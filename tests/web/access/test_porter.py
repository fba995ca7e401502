from __future__ import annotations

import shutil
from collections.abc import Iterator
from datetime import datetime, timedelta
from pathlib import Path

import httpx
import pytest

from service.pipeline.ready import Workshop
from service.store.open import open_folder, reading, writing
from service.store.people.role import Role
from service.store.people.tokens import load_token
from service.store.people.users import load_user
from service.web.access.porter import Porter, porter_of
from service.web.access.reader import Way
from service.web.app import Front
from tests.web.access.made import make_request
from tests.web.sent import problem_of
from tests.web.store.opened import MOMENT, open_client
from tests.web.store.people.people import (
    ADA,
    BEN,
    OTHER_PASSWORD,
    Headers,
    add_token,
    enter,
)

MINUTE = timedelta(minutes=1)


class _Clock:
    """A clock that a test moves on."""

    def __init__(self) -> None:
        self.now = MOMENT

    def __call__(self) -> datetime:
        return self.now


@pytest.fixture
def clock() -> _Clock:
    """Give a clock that stands."""
    return _Clock()


@pytest.fixture
def client(folder: Path, workshop: Workshop, clock: _Clock) -> Iterator[httpx.Client]:
    """Give a client of a service over a store with people, at the time of the clock."""
    with open_client(folder, workshop, clock=clock) as opened:
        yield opened


def _who(client: httpx.Client, headers: Headers) -> str:
    """Say whom the service takes the sender for."""
    reply = client.get("/api/sessions/current", headers=headers)
    return str(reply.json().get("name", reply.json().get("code")))


@pytest.fixture
def empty(tmp_path: Path, filled: Path) -> Path:
    """Give a store without users."""
    return shutil.copytree(filled, tmp_path / "empty")


def test_without_users_this_machine_may_everything(empty: Path, workshop: Workshop) -> None:
    """Nothing changes for whoever works alone, but what a proxy hands on is somebody else's."""
    with open_client(empty, workshop) as client:
        view = client.get("/api/sessions/current").json()
        assert view == {
            "name": "",
            "role": "manage",
            "way": "this machine",
            "scopes": ["view", "pack", "print", "manage"],
        }
        for name in ("X-Forwarded-For", "Forwarded", "X-Real-IP"):
            assert _who(client, {name: "192.0.2.1"}) == "sign-in-needed"


def test_without_users_nobody_else_may_anything(empty: Path, workshop: Workshop) -> None:
    """A service that others could reach does not take them for this machine."""
    front = Front(frozenset({"cards.museum.example"}))
    with open_client(empty, workshop, front=front) as client:
        assert _who(client, {}) == "sign-in-needed"
        assert client.get("/docs").status_code == 404


def test_from_the_first_user_on_everybody_signs_in(empty: Path, workshop: Workshop) -> None:
    """At once, and whoever added the first user is no exception."""
    body = {"name": ADA, "role": "manage", "password": OTHER_PASSWORD}
    with open_client(empty, workshop) as client:
        refused = client.post("/api/users", json={**body, "role": "print"})
        assert problem_of(refused)["code"] == "last-manager"
        assert client.post("/api/users", json=body).status_code == 201
        assert problem_of(client.get("/api/users"))["code"] == "sign-in-needed"
        assert _who(client, enter(client, ADA, OTHER_PASSWORD)) == ADA


def test_who_acts_is_whoever_signed_in(client: httpx.Client, folder: Path) -> None:
    """The header that names a person is not looked at any more."""
    note = {"checked_on": "2026-11-20"}
    for headers in (enter(client, BEN), add_token(folder, BEN, {Role.PACK})):
        headers["Underlid-Actor"] = "Ada%20Quill"
        reply = client.post("/api/containers/B-027/checks", json=note, headers=headers)
        assert reply.json()["by"] == BEN


@pytest.mark.parametrize(
    ("after", "who"),
    [
        (timedelta(hours=12) - MINUTE, ADA),
        (timedelta(hours=12), "sign-in-needed"),
        (timedelta(days=14), "sign-in-needed"),
    ],
    ids=str,
)
def test_a_session_ends_by_itself(
    client: httpx.Client, clock: _Clock, after: timedelta, who: str
) -> None:
    """Left alone for half a day it signs nobody in."""
    headers = enter(client, ADA)
    clock.now += after
    assert _who(client, headers) == who


def test_a_session_in_use_ends_after_a_fortnight(client: httpx.Client, clock: _Clock) -> None:
    """Each use lengthens it, but not for ever."""
    headers = enter(client, ADA)
    for _ in range(28):
        assert _who(client, headers) == ADA
        clock.now += timedelta(hours=11, minutes=59)
    clock.now = MOMENT + timedelta(days=14)
    assert _who(client, headers) == "sign-in-needed"


def test_rights_are_asked_at_every_request(client: httpx.Client, folder: Path) -> None:
    """A lower role, a lock and a revoked token hold in the middle of the work."""
    ada, ben = enter(client, ADA), enter(client, BEN)
    token = add_token(folder, BEN, {Role.VIEW, Role.PRINT})
    printing = "/api/cards/99/spoiled"
    for headers in (ben, token):
        assert client.post(printing, headers=headers).status_code == 404
    client.patch(f"/api/users/{BEN}", json={"role": "view"}, headers=ada)
    for headers in (ben, token):
        assert problem_of(client.post(printing, headers=headers))["code"] == "not-allowed"
        assert _who(client, headers) == BEN
    other = add_token(folder, BEN, {Role.VIEW})
    assert client.delete("/api/tokens/1", headers=ada).status_code == 200
    assert (_who(client, token), _who(client, other)) == ("sign-in-needed", BEN)
    client.patch(f"/api/users/{BEN}", json={"disabled": True}, headers=ada)
    assert (_who(client, ben), _who(client, other)) == ("sign-in-needed", "sign-in-needed")


@pytest.mark.parametrize(
    "value", ["Bearer", "Bearer nothing", "Basic QWRhOng=", "", "Bearer underlid_\udcff"]
)
def test_what_is_no_token_is_nobody(client: httpx.Client, value: str) -> None:
    """Also beside a cookie that would do: whoever sends a token means the token."""
    sent = {name.encode(): text.encode() for name, text in enter(client, ADA).items()}
    sent[b"Authorization"] = value.encode("utf-8", "surrogateescape")
    reply = client.get("/api/sessions/current", headers=sent)
    assert problem_of(reply)["code"] == "sign-in-needed"


def test_uses_are_written_down(client: httpx.Client, clock: _Clock, folder: Path) -> None:
    """A manager sees when somebody, or a program, was last here."""
    headers, token = enter(client, ADA), add_token(folder, BEN, {Role.VIEW})
    clock.now += 6 * MINUTE
    assert (_who(client, headers), _who(client, token)) == (ADA, BEN)
    engine = open_folder(folder)
    with reading(engine) as connection:
        seen = {load_user(connection, name).last_seen for name in (ADA, BEN)}
        assert seen | {load_token(connection, 1).last_used} == {clock.now}
    engine.dispose()


@pytest.mark.slow
def test_a_busy_store_sends_nobody_away(client: httpx.Client, clock: _Clock, folder: Path) -> None:
    """While somebody else writes for long, readers are known all the same."""
    headers, token = enter(client, ADA), add_token(folder, BEN, {Role.VIEW})
    clock.now += 6 * MINUTE
    engine = open_folder(folder)
    with writing(engine):
        assert (_who(client, headers), _who(client, token)) == (ADA, BEN)
    engine.dispose()


def test_without_a_store_there_are_no_users() -> None:
    """The paths that keep nothing then ask nobody."""
    assert Porter(None, is_local=True).recognise(make_request()).way is Way.THIS_MACHINE


def test_an_application_without_a_porter_answers_nobody() -> None:
    """What was put together wrongly fails, and lets nobody in."""
    request = make_request()
    with pytest.raises(TypeError):
        porter_of(request)
    request.scope["underlid"] = {"porter": "nobody"}
    with pytest.raises(TypeError):
        porter_of(request)
