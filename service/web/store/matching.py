"""ETags of what people edit, and whether a change was made from the current state (RFC 9110)."""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Iterator
from contextlib import contextmanager

from service.errors import PackingConflictError
from service.records.record import ContainerRecord, ObjectRecord
from service.sentence import Sentence
from service.store.canonical import encode_record, encode_source
from service.web.replies.problems import states_of
from service.web.replies.refusals import Refusal, RefusedError, State

_TAG = re.compile(r'(?:W/)?"[^"]*"')
_REVISION = re.compile(r'"r(\d{1,9})"')

Record = ObjectRecord | ContainerRecord


def tag_record(record: Record) -> str:
    """Give the ETag of a record: any change of it or of its source row is another."""
    return tag_text(encode_record(record) + "\n" + encode_source(record.source))


def tag_text(text: str) -> str:
    """Give the ETag of anything else that people edit, by its text."""
    return f'"{hashlib.sha256(text.encode()).hexdigest()[:32]}"'


def tag_revision(revision: int) -> str:
    """Give the ETag of a container's packings: the revision of the current one."""
    return f'"r{revision}"'


def refuse_stale(if_match: str, *, yours: Record, current: Record) -> None:
    """Refuse a change that was not made from the current record.

    Raises:
        RefusedError: When the header is missing, or names another state.
    """
    refuse_other(
        if_match,
        tag_record(current),
        yours=json.loads(encode_record(yours)),
        current=json.loads(encode_record(current)),
    )


def refuse_other(if_match: str, tag: str, *, yours: State, current: State) -> None:
    """Refuse a change that was not made from the state with this tag.

    Raises:
        RefusedError: When the header is missing, or names another state.
    """
    if tag not in _tags(if_match):
        detail = Sentence("It was changed since you read it.")
        raise RefusedError(Refusal.STALE, detail, yours=yours, current=current)


def read_revision(if_match: str) -> int:
    """Read the revision that the packer has seen.

    Raises:
        RefusedError: When the header is missing, or names no one revision.
    """
    revisions = [found[1] for tag in _tags(if_match) if (found := _REVISION.fullmatch(tag))]
    if len(revisions) != 1:
        raise RefusedError(Refusal.IF_MATCH_MISSING, 'One revision is needed, such as "r3".')
    return int(revisions[0])


@contextmanager
def telling_stale() -> Iterator[None]:
    """Tell a conflict of packings as what it is to a conditional request: a stale state.

    Raises:
        RefusedError: When somebody has packed the container meanwhile; it holds both states.
    """
    try:
        yield
    except PackingConflictError as error:
        yours, current = states_of(error)
        raise RefusedError(Refusal.STALE, str(error), yours=yours, current=current) from None


def _tags(if_match: str) -> list[str]:
    """List the tags of the header; `*` would be a change made from no state one has seen.

    Raises:
        RefusedError: When there is none.
    """
    tags = _TAG.findall(if_match)
    if not tags:
        raise RefusedError(Refusal.IF_MATCH_MISSING, "Only what was read before can be changed.")
    return tags
