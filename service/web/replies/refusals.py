"""What the edge itself refuses: codes, status and advice, and the error that carries them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum


class Refusal(StrEnum):
    """What the edge itself refuses, by code."""

    BAD_REQUEST = "bad-request"
    SIGN_IN_NEEDED = "sign-in-needed"
    FOREIGN_PAGE = "foreign-page"
    NOT_ALLOWED = "not-allowed"
    HTTPS_NEEDED = "https-needed"
    NOT_FOUND = "not-found"
    METHOD_NOT_ALLOWED = "method-not-allowed"
    NOT_ACCEPTABLE = "not-acceptable"
    ALREADY_THERE = "already-there"
    NOT_EMPTY = "not-empty"
    STALE = "stale"
    TOO_LARGE = "too-large"
    FOREIGN_HOST = "foreign-host"
    UNUSABLE_FIELD = "unusable-field"
    SEVERAL_FILES = "several-files"
    NO_SUCH_PAGE = "no-such-page"
    SAME_PHOTO_TWICE = "same-photo-twice"
    ACTOR_MISSING = "actor-missing"
    KEY_USED = "key-used"
    IF_MATCH_MISSING = "if-match-missing"
    TOO_OFTEN = "too-often"
    FAILED = "failed"
    BUSY = "busy"


@dataclass(frozen=True, slots=True)
class _RefusalKind:
    status: int
    advice: str


REFUSALS: dict[Refusal, _RefusalKind] = {
    Refusal.BAD_REQUEST: _RefusalKind(400, "Send the request in the form the description shows."),
    Refusal.SIGN_IN_NEEDED: _RefusalKind(401, "Sign in, or send a token that holds."),
    Refusal.FOREIGN_PAGE: _RefusalKind(403, "Send the request from a page of this service."),
    Refusal.NOT_ALLOWED: _RefusalKind(403, "Ask whoever manages the users for the role."),
    Refusal.HTTPS_NEEDED: _RefusalKind(403, "Use the address that begins with https."),
    Refusal.NOT_FOUND: _RefusalKind(404, "Look the path up in /openapi.json."),
    Refusal.METHOD_NOT_ALLOWED: _RefusalKind(405, "Look the path up in /openapi.json."),
    Refusal.NOT_ACCEPTABLE: _RefusalKind(406, "Ask for one of the media types that are named."),
    Refusal.ALREADY_THERE: _RefusalKind(409, "Read what is there, and change that."),
    Refusal.NOT_EMPTY: _RefusalKind(409, "Start with another data folder to try things out."),
    Refusal.STALE: _RefusalKind(
        412, "Compare both states, and send the change again with the ETag of the current one."
    ),
    Refusal.TOO_LARGE: _RefusalKind(413, "Send fewer or smaller photos, box by box."),
    Refusal.FOREIGN_HOST: _RefusalKind(
        421, "Use the address that was printed when the service began."
    ),
    Refusal.UNUSABLE_FIELD: _RefusalKind(422, "Correct the field and send the request again."),
    Refusal.SEVERAL_FILES: _RefusalKind(
        422, "Name one kind and one stock, or ask for application/zip."
    ),
    Refusal.NO_SUCH_PAGE: _RefusalKind(422, "Count the sheets of the file from 1."),
    Refusal.SAME_PHOTO_TWICE: _RefusalKind(422, "Give each photo a name of its own."),
    Refusal.ACTOR_MISSING: _RefusalKind(
        422, "Name the person in the header Underlid-Actor, percent-encoded as UTF-8."
    ),
    Refusal.KEY_USED: _RefusalKind(422, "Take a new Idempotency-Key for another request."),
    Refusal.IF_MATCH_MISSING: _RefusalKind(
        428, "Read what is there, and send its ETag in If-Match."
    ),
    Refusal.TOO_OFTEN: _RefusalKind(429, "Wait a minute and ask again."),
    Refusal.FAILED: _RefusalKind(
        500, "Try again; if it comes back, give whoever runs this the mark."
    ),
    Refusal.BUSY: _RefusalKind(503, "Wait a little and send the request again."),
}
"""The status of each refusal and what to do."""


State = Mapping[str, object]
"""What somebody edits, as plain data: a record or a packing."""


class RefusedError(Exception):
    """Raised at the edge when a request cannot be taken."""

    def __init__(
        self,
        code: Refusal,
        detail: str,
        *,
        yours: State | None = None,
        current: State | None = None,
    ) -> None:
        """Keep the code, what is wrong with this request, and both states where two disagree."""
        self.code = code
        self.detail = detail
        self.yours = yours
        self.current = current
        super().__init__(detail)
