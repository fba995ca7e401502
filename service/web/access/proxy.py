"""Behind a proxy: what it says about the first request is believed, if it runs on this machine."""

from __future__ import annotations

from ipaddress import ip_address

from starlette.datastructures import Headers, MutableHeaders
from starlette.types import ASGIApp, Receive, Scope, Send

_SCHEMES = frozenset({"http", "https"})


class FromProxy:
    """Middleware that puts scheme, host and address of the first request in their places.

    Where several proxies are named in a header the last is believed, which the one on this machine
    wrote; a caller may have written the others.
    """

    def __init__(self, app: ASGIApp) -> None:
        """Take the application."""
        self._app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Hand the request on as the proxy got it."""
        if scope["type"] == "http" and _is_here(scope.get("client")):
            scope = _as_first(scope)
        await self._app(scope, receive, send)


def _as_first(scope: Scope) -> Scope:
    headers = Headers(scope=scope)
    first = {**scope, "headers": list(scope["headers"])}
    scheme, host, address = (
        headers.get(f"x-forwarded-{name}", "").rpartition(",")[2].strip()
        for name in ("proto", "host", "for")
    )
    if scheme in _SCHEMES:
        first["scheme"] = scheme
    if host:
        MutableHeaders(scope=first)["host"] = host
    if address:
        first["client"] = (address, 0)
    return first


def _is_here(client: tuple[str, int] | None) -> bool:
    try:
        return client is not None and ip_address(client[0]).is_loopback
    except ValueError:
        return False
