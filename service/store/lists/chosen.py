"""Pages of those containers that are asked for, by number or as one walks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from sqlalchemy import Connection, Select, func, or_, select, tuple_

from service.records.record import ContainerRecord
from service.store.base.bulk import in_portions
from service.store.canonical import decode_record
from service.store.lists.index import CONTAINER_WORDS, query_keys
from service.store.lists.pages import MOST, ListedPage, read_cursor, write_cursor
from service.store.lists.words import split_words
from service.store.packing.load import IS_CURRENT
from service.store.tables import containers, packings, places
from service.store.today.note import select_differing


@dataclass(frozen=True, slots=True)
class Choice:
    """Which containers are asked for.

    Attributes:
        words: Only those that hold words beginning so; all where there are none.
        is_empty: Only those in which nothing lies.
        is_wrong: Only those with a card to swap, as it was noted last.
        is_walk: In the order of their locations, those without one last; else of their numbers.
    """

    words: str = ""
    is_empty: bool = False
    is_wrong: bool = False
    is_walk: bool = False


def choose_containers(
    connection: Connection, choice: Choice, *, limit: int, cursor: str = ""
) -> ListedPage[ContainerRecord]:
    """List the containers that are asked for.

    Raises:
        CursorError: When the cursor is none of ours.
    """
    limit = max(1, min(limit, MOST))
    sort = containers.c.location_key if choice.is_walk else containers.c.sort_key
    order = (sort, containers.c.sort_key, containers.c.id)
    columns = (containers.c.record, containers.c.source, sort.label("first"), *order[1:])
    query: Select[Any] = _narrow(connection, select(*columns), choice)
    if cursor:
        sorted_by, key = read_cursor(cursor)
        first, _, second = sorted_by.partition("\n")
        query = query.where(tuple_(*order) > (first, second, key))
    rows = connection.execute(query.order_by(*order).limit(limit + 1)).all()
    records = tuple(
        decode_record(ContainerRecord, row.record, source=row.source) for row in rows[:limit]
    )
    if len(rows) <= limit:
        return ListedPage(records)
    last = rows[limit - 1]
    return ListedPage(records, write_cursor(f"{last.first}\n{last.sort_key}", last.id))


def count_wrong(connection: Connection, numbers: Sequence[str]) -> dict[str, int]:
    """Count the cards to swap of containers that have any, as they were noted last."""
    found: dict[str, int] = {}
    for some in in_portions(numbers):
        differing = select_differing().subquery()
        query = (
            select(containers.c.container_number, func.count())
            .join(differing, differing.c.container_id == containers.c.id)
            .where(containers.c.container_number.in_(some))
            .group_by(containers.c.container_number)
        )
        found.update(dict(connection.execute(query).all()))
    return found


def _narrow(connection: Connection, query: Select[Any], choice: Choice) -> Select[Any]:
    if choice.words:
        wanted = split_words(choice.words)
        keys = query_keys(connection, CONTAINER_WORDS, wanted) if wanted else ()
        query = query.where(containers.c.id.in_(keys))
    if choice.is_empty:
        filled = (
            select(packings.c.id)
            .join(places, places.c.packing_id == packings.c.id)
            .where(IS_CURRENT)
            .exists()
        )
        query = query.where(or_(containers.c.revision == 0, ~filled))
    if choice.is_wrong:
        differing = select_differing().subquery()
        query = query.where(containers.c.id.in_(select(differing.c.container_id)))
    return query
