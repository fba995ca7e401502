"""Pages of a long list: how many, after which, and the link to the next."""

from __future__ import annotations

from typing import Annotated
from urllib.parse import urlencode

from fastapi import Depends, Query, Request, Response

from service.errors import CursorError

MOST_ROWS = 500
_MOST_DIGITS = 9


class Paging:
    """Which part of a list is asked for, and where its reply links to the next one."""

    def __init__(
        self,
        request: Request,
        response: Response,
        limit: Annotated[int, Query(ge=1, le=MOST_ROWS, description="How many at most.")] = 100,
        after: Annotated[
            str, Query(max_length=2000, description="Where the last page ended; its Link holds it.")
        ] = "",
    ) -> None:
        """Take how many are wanted, and after which."""
        self._request = request
        self._response = response
        self.limit = limit
        self.after = after

    def link_next(self, cursor: str) -> None:
        """Link to the next page, which asks the same with another cursor (RFC 8288)."""
        if cursor:
            asked = self._request.query_params.multi_items()
            kept = [(name, value) for name, value in asked if name != "after"]
            # The path as it was sent: a number in it may hold letters that no header takes.
            path = self._request.scope.get("raw_path", b"").decode("ascii")
            query = urlencode([*kept, ("after", cursor)])
            self._response.headers["Link"] = f'<{path}?{query}>; rel="next"'


ThePaging = Annotated[Paging, Depends()]


def read_count(after: str) -> int | None:
    """Read a cursor that is a number counted downwards; None where there is none yet.

    Raises:
        CursorError: When it is no cursor of ours.
    """
    if not after:
        return None
    if not (after.isascii() and after.isdigit() and len(after) <= _MOST_DIGITS):
        raise CursorError(after)
    return int(after)
