from __future__ import annotations

import asyncio

import httpx
import pytest
from fastapi import Request
from starlette.types import Message, Receive, Scope, Send

from service.web.access.proxy import FromProxy
from service.web.app import Front, make_app
from service.web.press import Presses
from tests.web.access.made import make_request
from tests.web.sent import problem_of, running_app


def _seen(request: Request) -> tuple[str, str, str]:
    """Give the scheme, the host and the address that the application behind sees."""
    found: list[Scope] = []

    async def app(scope: Scope, _receive: Receive, _send: Send) -> None:
        await asyncio.sleep(0)
        found.append(scope)

    async def receive() -> Message:
        return await asyncio.sleep(0, {})

    async def send(_message: Message) -> None:
        await asyncio.sleep(0)

    asyncio.run(FromProxy(app)(request.scope, receive, send))
    (scope,) = found
    return scope["scheme"], Request(scope).headers["host"], scope["client"][0]


def test_a_proxy_on_this_machine_is_believed() -> None:
    """The last of several is the one it wrote; the others may be anybody's."""
    request = make_request(
        x_forwarded_proto="https",
        x_forwarded_host="evil.example, cards.museum.example",
        x_forwarded_for="203.0.113.9, 192.0.2.7",
    )
    assert _seen(request) == ("https", "cards.museum.example", "192.0.2.7")


@pytest.mark.parametrize("client", ["192.0.2.1", "no address"])
def test_nobody_else_is(client: str) -> None:
    """What comes from another machine is what it is, whatever it says."""
    request = make_request(
        client=client, x_forwarded_proto="https", x_forwarded_host="x", x_forwarded_for="::1"
    )
    assert _seen(request) == ("http", "localhost:8000", client)


def test_what_says_nothing_stays_as_it_is() -> None:
    """Headers that are missing, empty or no scheme change nothing."""
    plain = ("http", "localhost:8000", "127.0.0.1")
    assert _seen(make_request()) == plain
    assert _seen(make_request(x_forwarded_proto="gopher", x_forwarded_for="")) == plain


def _ask(headers: dict[str, str], *, front: Front) -> httpx.Response:
    app = make_app(Presses([], patience_seconds=0), "127.0.0.1", front=front)
    with running_app(app) as client:
        return client.get("/health", headers=headers)


def test_the_names_of_the_proxy_have_to_be_allowed() -> None:
    """A forged name is turned away behind a proxy, and the header alone opens nothing without."""
    front = Front(frozenset({"cards.museum.example"}), behind_proxy=True)
    named = {"X-Forwarded-Host": "cards.museum.example"}
    assert _ask(named, front=front).status_code == 200
    forged = {"X-Forwarded-Host": "evil.example"}
    assert problem_of(_ask(forged, front=front))["code"] == "foreign-host"
    forged = {"Host": "evil.example", "X-Forwarded-Host": "localhost"}
    assert problem_of(_ask(forged, front=Front()))["code"] == "foreign-host"
