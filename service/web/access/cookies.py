"""The cookie that holds the secret of a session; programs cannot read it, other sites not send it.

Over https its name has the prefix `__Host-`, which browsers take only with Secure, for the whole
host and from this host itself. Over plain http a password or cookie goes on this machine alone.
"""

from __future__ import annotations

from fastapi import Response
from starlette.requests import HTTPConnection

from service.keeping.people.signing_in import LONGEST
from service.web.guard import LOOPBACK
from service.web.replies.refusals import Refusal, RefusedError

SECURE_NAME = "__Host-underlid"
LOCAL_NAME = "underlid"


def read_session(connection: HTTPConnection) -> str | None:
    """Read the secret of the session; None where there is no cookie of ours."""
    return connection.cookies.get(_name_of(connection)) or None


def set_session(connection: HTTPConnection, response: Response, secret: str) -> None:
    """Give the secret of a session that has just begun to the browser."""
    _write(connection, response, secret, int(LONGEST.total_seconds()))


def clear_session(connection: HTTPConnection, response: Response) -> None:
    """Take the cookie away again."""
    _write(connection, response, "", 0)


def refuse_in_clear(connection: HTTPConnection) -> None:
    """Refuse to take a password that anybody on the way could have read.

    Raises:
        RefusedError: When the request came over plain http from another machine.
    """
    if not _is_secure(connection) and connection.url.hostname not in LOOPBACK:
        raise RefusedError(Refusal.HTTPS_NEEDED, "Signing in over plain http is not taken.")


def _write(connection: HTTPConnection, response: Response, secret: str, seconds: int) -> None:
    response.set_cookie(
        _name_of(connection),
        secret,
        max_age=seconds,
        path="/",
        secure=_is_secure(connection),
        httponly=True,
        samesite="lax",
    )


def _name_of(connection: HTTPConnection) -> str:
    return SECURE_NAME if _is_secure(connection) else LOCAL_NAME


def _is_secure(connection: HTTPConnection) -> bool:
    return bool(connection.scope["scheme"] == "https")
