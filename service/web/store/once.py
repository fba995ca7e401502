"""Makes a thing once: the same request under the same key gets the first reply again."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from fastapi import Response
from pydantic import BaseModel

from service.store.handles import Connection
from service.store.kept.replies import KeptReply, find_reply, keep_reply
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.asking import Asked

_JSON = "application/json"


@dataclass(frozen=True, slots=True)
class Made:
    """What was made, as it is told: the body, the status, and further headers."""

    body: BaseModel
    status: int = 201
    headers: Mapping[str, str] = field(default_factory=dict)

    def to_response(self) -> Response:
        """Write the reply."""
        body = self.body.model_dump_json()
        return Response(body, self.status, headers=dict(self.headers), media_type=_JSON)


def make_once(asked: Asked, sent: str, work: Callable[[Connection], Made]) -> Response:
    """Do the work and keep the reply in one transaction; a reply kept earlier comes again.

    Raises:
        RefusedError: When the key was used for another request.
    """
    with asked.counter.writing() as connection:
        again = find_again(connection, asked, sent)
        if again is not None:
            return again
        made = work(connection)
        keep_made(connection, asked, sent, made)
    return made.to_response()


def find_again(connection: Connection, asked: Asked, sent: str) -> Response | None:
    """Find the reply that the same request was given under its key.

    Raises:
        RefusedError: When the key was used for another request.
    """
    kept = find_reply(connection, asked.key) if asked.key else None
    if kept is None:
        return None
    if kept.request_sha256 != _digest(asked, sent):
        detail = "The Idempotency-Key was used for another request."
        raise RefusedError(Refusal.KEY_USED, detail)
    said = json.loads(kept.reply)
    return Response(said["body"], kept.status, headers=said["headers"], media_type=_JSON)


def keep_made(connection: Connection, asked: Asked, sent: str, made: Made) -> None:
    """Keep a reply under the key of its request, in the transaction that did the work."""
    if asked.key:
        reply = {"body": made.body.model_dump_json(), "headers": dict(made.headers)}
        kept = KeptReply(_digest(asked, sent), made.status, json.dumps(reply))
        keep_reply(connection, asked.key, kept, at=asked.stamp.at)


def _digest(asked: Asked, sent: str) -> str:
    """Give the SHA-256 of who asked for what, and at which path."""
    text = json.dumps([asked.stamp.actor, asked.path, sent])
    return hashlib.sha256(text.encode()).hexdigest()
