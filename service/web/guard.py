"""What every request passes first: the host, the page it comes from, its length, and the crowd."""

from __future__ import annotations

import re
from dataclasses import dataclass
from ipaddress import ip_address

from starlette.datastructures import Headers, MutableHeaders
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from service.sentence import Sentence
from service.web.replies.problems import Problem, ProblemResponse, refuse
from service.web.replies.refusals import Refusal

MOST_BODY_BYTES = 512 * 1024 * 1024
MOST_AT_ONCE = 8
"""Requests with a body under way; each may hold a whole batch of photos on disk."""


@dataclass(frozen=True, slots=True)
class Limits:
    """How much is taken in: bytes of one body, and requests with a body at once."""

    most_body_bytes: int = MOST_BODY_BYTES
    most_at_once: int = MOST_AT_ONCE


LOOPBACK = frozenset({"localhost", "127.0.0.1", "::1"})
_HOST = re.compile(r"(?:\[(?P<six>[0-9a-f:.]{2,45})\]|(?P<name>[a-z0-9._-]{1,255}))(?::\d{1,5})?")
_READING = frozenset({"GET", "HEAD", "OPTIONS"})
_HEADERS = {
    "X-Content-Type-Options": "nosniff",
    "Content-Security-Policy": "default-src 'none'; frame-ancestors 'none'",
    # With "no-referrer" browsers send "Origin: null" from our own forms (Fetch standard, "append a
    # request Origin header"); this tells other sites as little.
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Cache-Control": "no-store",
}


class Guard:
    """Middleware that turns away what no route should see, and adds headers to every reply."""

    def __init__(self, app: ASGIApp, hosts: frozenset[str], limits: Limits | None = None) -> None:
        """Take the names of this machine besides the address a request came in by."""
        self._app = app
        self._hosts = hosts
        self._limits = limits or Limits()
        self._under_way = 0

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer at once what is refused and hand the rest on."""
        if scope["type"] != "http":
            await self._app(scope, receive, send)
            return

        async def send_with_headers(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                for name, value in _HEADERS.items():
                    headers.setdefault(name, value)
            await send(message)

        problem = self._refuse(scope)
        if problem is not None:
            await ProblemResponse(problem)(scope, receive, send_with_headers)
            return
        heavy = scope["method"] not in _READING
        self._under_way += heavy
        try:
            await self._app(scope, receive, send_with_headers)
        finally:
            self._under_way -= heavy

    def _refuse(self, scope: Scope) -> Problem | None:
        headers = Headers(scope=scope)
        host = headers.get("host", "")
        server = scope.get("server") or ("",)
        # A page that has its own name lead here still sends its name; an address cannot be lent.
        if _name_of(host) not in self._hosts | {str(server[0])}:
            return refuse(Refusal.FOREIGN_HOST, "This service does not go by the name in Host.")
        if scope["method"] in _READING:
            return None
        if _is_foreign(headers, f"{scope['scheme']}://{host}"):
            return refuse(Refusal.FOREIGN_PAGE, "A page of another site may not use this service.")
        return self._refuse_weight(headers)

    def _refuse_weight(self, headers: Headers) -> Problem | None:
        # The length is a number: the server has turned away everything else.
        if int(headers.get("content-length", "0")) > self._limits.most_body_bytes:
            return refuse_body(self._limits.most_body_bytes)
        if self._under_way >= self._limits.most_at_once:
            return refuse(
                Refusal.BUSY,
                Sentence("{under_way} requests are under way.", under_way=self._under_way),
            )
        return None


def is_loopback(host: str) -> bool:
    """Tell whether an address is one that only this machine reaches."""
    try:
        return ip_address(host).is_loopback
    except ValueError:
        return host in LOOPBACK


def refuse_body(most_bytes: int) -> Problem:
    """Say how much may be sent at once."""
    return refuse(
        Refusal.TOO_LARGE,
        Sentence("At most {most_bytes} bytes are taken in one request.", most_bytes=most_bytes),
    )


def _name_of(host: str) -> str | None:
    match = _HOST.fullmatch(host.casefold())
    return match and (match["six"] or match["name"])


def _is_foreign(headers: Headers, own: str) -> bool:
    """Say whether a browser sends this for a page of another origin; programs send neither."""
    origin = headers.get("origin")
    other = origin is not None and origin.casefold() != own.casefold()
    return other or headers.get("sec-fetch-site", "none") not in {"none", "same-origin"}
