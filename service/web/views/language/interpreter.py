"""Chooses the language of each request: as this browser was told, else as it prefers."""

from __future__ import annotations

import re

from starlette.requests import HTTPConnection
from starlette.types import ASGIApp, Receive, Scope, Send

from service.languages.page_words import choose_language
from service.languages.saying import speaking

LANGUAGE_COOKIE = "underlid-language"
VARY = "Accept-Language, Cookie"
"""What a page depends on besides its address (RFC 9110, section 12.5.5)."""
_LANGUAGE = re.compile(r"[a-z]{2,3}(?:-[A-Z]{2})?")


class Interpreter:
    """Middleware: whatever is said while a request is answered is said in its language."""

    def __init__(self, app: ASGIApp) -> None:
        """Take the application whose pages are read."""
        self._app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Hand the request on; what is no request is spoken in English."""
        if scope["type"] != "http":
            await self._app(scope, receive, send)
            return
        with speaking(read_language(HTTPConnection(scope))):
            await self._app(scope, receive, send)


def read_language(connection: HTTPConnection) -> str:
    """Tell which language on offer a request asks for."""
    asked = connection.cookies.get(LANGUAGE_COOKIE, "")
    return choose_language([asked] if _LANGUAGE.fullmatch(asked) else _preferred(connection))


def _preferred(connection: HTTPConnection) -> list[str]:
    """List the languages of the browser, best first (RFC 9110, section 12.5.4)."""
    header = connection.headers.get("accept-language", "")
    parts = [part.strip() for part in header.split(",")]
    weighed = [
        (-_weight(rest), at, tag.strip())
        for at, part in enumerate(parts[:20])
        for tag, _, rest in [part.partition(";")]
        if tag
    ]
    return [tag for _, _, tag in sorted(weighed)]


def _weight(parameter: str) -> float:
    try:
        return float(parameter.strip().removeprefix("q=") or 1)
    except ValueError:
        return 0.0
