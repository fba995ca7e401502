"""Pages of objects and containers in natural order; a cursor says where the next one begins."""

from __future__ import annotations

import base64
import json
from dataclasses import dataclass
from typing import Generic, TypeVar

from sqlalchemy import Connection, Table, select, tuple_

from service.errors import CursorError, UnstorableTextError
from service.records.record import ContainerRecord, ObjectRecord
from service.store.canonical import check_text, decode_record
from service.store.tables import containers, objects

Record = TypeVar("Record", ObjectRecord, ContainerRecord)

MOST = 1_000
_MOST_KEYS = 2**31


@dataclass(frozen=True, slots=True)
class ListedPage(Generic[Record]):
    """Some records, and the cursor of the next page; it is empty after the last one."""

    records: tuple[Record, ...]
    next_cursor: str = ""


def list_objects(
    connection: Connection, *, limit: int, cursor: str = ""
) -> ListedPage[ObjectRecord]:
    """List objects in natural order of their numbers.

    Raises:
        CursorError: When the cursor is none of ours.
    """
    return _list(connection, objects, ObjectRecord, limit=limit, cursor=cursor)


def list_containers(
    connection: Connection, *, limit: int, cursor: str = ""
) -> ListedPage[ContainerRecord]:
    """List containers in natural order of their numbers.

    Raises:
        CursorError: When the cursor is none of ours.
    """
    return _list(connection, containers, ContainerRecord, limit=limit, cursor=cursor)


def _list(
    connection: Connection, table: Table, kind: type[Record], *, limit: int, cursor: str
) -> ListedPage[Record]:
    limit = max(1, min(limit, MOST))
    place = tuple_(table.c.sort_key, table.c.id)
    query = (
        select(table.c.sort_key, table.c.id, table.c.record, table.c.source)
        .order_by(table.c.sort_key, table.c.id)
        .limit(limit + 1)
    )
    if cursor:
        query = query.where(place > read_cursor(cursor))
    rows = connection.execute(query).all()
    records = tuple(decode_record(kind, row.record, source=row.source) for row in rows[:limit])
    if len(rows) <= limit:
        return ListedPage(records)
    return ListedPage(records, write_cursor(rows[limit - 1].sort_key, rows[limit - 1].id))


def write_cursor(sort_key: str, key: int) -> str:
    """Write a cursor that names the last record of a page."""
    return base64.urlsafe_b64encode(json.dumps([sort_key, key]).encode()).decode()


def read_cursor(cursor: str) -> tuple[str, int]:
    """Read a cursor.

    Raises:
        CursorError: When it is none of ours.
    """
    try:
        sort_key, key = json.loads(base64.urlsafe_b64decode(cursor.encode("ascii")))
    except (ValueError, TypeError, RecursionError) as error:
        raise CursorError(cursor) from error
    if not isinstance(sort_key, str) or type(key) is not int or not 0 < key < _MOST_KEYS:
        raise CursorError(cursor)
    try:
        return check_text(sort_key), key
    except UnstorableTextError as error:
        raise CursorError(cursor) from error
