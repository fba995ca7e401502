"""What the requests of a service work on: handed to each, so that routes are built only once."""

from __future__ import annotations

from collections.abc import Mapping

from starlette.requests import HTTPConnection
from starlette.types import ASGIApp, Receive, Scope, Send

_KEY = "underlid"


class HandingOn:
    """Middleware: hands every request what this service works on."""

    def __init__(self, app: ASGIApp, things: Mapping[str, object]) -> None:
        """Take the application and what its routes ask for, by name."""
        self._app, self._things = app, things

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Hand the request on with all of it."""
        await self._app({**scope, _KEY: self._things}, receive, send)


def handed(connection: HTTPConnection, name: str) -> object:
    """Give what was handed on under a name; None where the service has none."""
    return connection.scope.get(_KEY, {}).get(name)
