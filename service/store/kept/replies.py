"""What was answered to requests that named a key, so that the same request is answered once."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, delete, insert, select

from service.store.canonical import check_text
from service.store.tables import replies


@dataclass(frozen=True, slots=True)
class KeptReply:
    """The answer to a request, and the SHA-256 of what was asked."""

    request_sha256: str
    status: int
    reply: str


def find_reply(connection: Connection, key: str) -> KeptReply | None:
    """Find what was answered under a key; None where nothing was."""
    query = select(replies).where(replies.c.key == key)
    for row in connection.execute(query).mappings():
        return KeptReply(row["request_sha256"], row["status"], row["reply"])
    return None


def keep_reply(connection: Connection, key: str, kept: KeptReply, *, at: datetime) -> None:
    """Keep an answer, in the transaction that did what was asked."""
    connection.execute(
        insert(replies).values(
            key=check_text(key),
            request_sha256=kept.request_sha256,
            status=kept.status,
            reply=check_text(kept.reply),
            at=at,
        )
    )


def forget_replies(connection: Connection, *, before: datetime) -> int:
    """Forget what was answered before a moment, and say how many answers that were."""
    return connection.execute(delete(replies).where(replies.c.at < before)).rowcount
