"""What was done, told once on the next page, with a way back where there is one."""

from __future__ import annotations

import base64
import binascii
import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass

from fastapi import Request, Response
from fastapi.responses import RedirectResponse

COOKIE = "underlid-notice"
_SECONDS = 120
_LONGEST = 3500
"""Letters a cookie may have: browsers drop one of more than 4,096 bytes (RFC 6265, section 6.1)."""


@dataclass(frozen=True, slots=True)
class Undo:
    """The form that takes a change back: where it is sent and with which fields."""

    path: str
    fields: Mapping[str, str]

    def __post_init__(self) -> None:
        """Refuse what leads elsewhere, for it may come from a cookie.

        Raises:
            ValueError: When the path is not of this service, or a field is no text.
        """
        texts = all(isinstance(value, str) for value in self.fields.values())
        if not self.path.startswith("/") or self.path.startswith("//") or not texts:
            raise ValueError(self.path)


@dataclass(frozen=True, slots=True)
class Notice:
    """A sentence about what was just done."""

    words: str
    undo: Undo | None = None


def go_to(path: str, notice: Notice | None = None) -> Response:
    """Send the reader to a page after a change, so that loading it again changes nothing."""
    response = RedirectResponse(path, status_code=303)
    if notice is not None:
        text = json.dumps(asdict(notice))
        if len(text) * 4 // 3 > _LONGEST:
            text = json.dumps(asdict(Notice(notice.words[:500])))
        value = base64.urlsafe_b64encode(text.encode()).decode("ascii")
        response.set_cookie(
            COOKIE, value, max_age=_SECONDS, path="/", httponly=True, samesite="strict"
        )
    return response


def read_notice(request: Request) -> Notice | None:
    """Read what the last change left; anything else in its cookie counts as nothing."""
    try:
        said = json.loads(base64.urlsafe_b64decode(request.cookies.get(COOKIE, "")))
        undo = Undo(**said["undo"]) if said["undo"] else None
        return Notice(str(said["words"]), undo)
    except (binascii.Error, ValueError, KeyError, TypeError, AttributeError):
        return None
