"""The entrance: where tries are counted, and the cookie of a session is given and taken away."""

from __future__ import annotations

from typing import Annotated

from fastapi import Depends, Request, Response

from service.keeping.people.signing_in import SignedIn
from service.web.access.cookies import clear_session, refuse_in_clear, set_session
from service.web.access.porter import ThePorter
from service.web.access.reader import Reader

MOST_BODY_BYTES = 64 * 1024
"""What anybody may send who has not signed in: names and codes are short."""


class Entrance:
    """Where one request signs somebody in or out.

    The cookie goes with what a route returns as data; a route that returns a response of its own
    sets it there, with `set_session`.
    """

    def __init__(self, request: Request, response: Response, porter: ThePorter) -> None:
        """Take the request, the reply to it, and the porter."""
        self._request = request
        self._response = response
        self._porter = porter

    def count(self, name: str) -> None:
        """Count a try to come in, whatever comes of it.

        Raises:
            RefusedError: When the request came in clear over a network, or there were too many.
        """
        refuse_in_clear(self._request)
        self._porter.tries.count(self._request, name)

    def let_in(self, signed: SignedIn) -> None:
        """Give the cookie of a session that has just begun."""
        set_session(self._request, self._response, signed.secret)

    def show_out(self) -> Reader:
        """Take the cookie away, and say who is left."""
        clear_session(self._request, self._response)
        return self._porter.nobody()


TheEntrance = Annotated[Entrance, Depends()]
