"""Keeps the fingerprints of today's object tags, and says which attached tags differ from them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from sqlalchemy import Connection, delete, func, insert, or_, select

from service.store.base.bulk import execute_rows, in_portions
from service.store.printed.card import PrintedCard
from service.store.printed.runs import read_cards, select_cards
from service.store.tables import CardState, objects, printed_cards
from service.store.today.note import count_changes
from service.store.today.tables import today_stale_tags, today_tags


@dataclass(frozen=True, slots=True)
class StaleTags:
    """Objects whose tags are to be worded anew, and the last change that was made by then."""

    object_numbers: tuple[str, ...]
    as_of: int


def load_stale_tags(connection: Connection, *, limit: int) -> StaleTags:
    """Name some of the objects that are marked, the earliest changed first."""
    query = (
        select(objects.c.object_number)
        .join(today_stale_tags, today_stale_tags.c.object_id == objects.c.id)
        .order_by(today_stale_tags.c.since, objects.c.id)
        .limit(limit)
    )
    return StaleTags(tuple(connection.execute(query).scalars()), count_changes(connection))


def count_stale_tags(connection: Connection) -> int:
    """Count the objects that are marked."""
    query = select(func.count()).select_from(today_stale_tags)
    return int(connection.execute(query).scalar_one())


def save_today_tags(connection: Connection, fingerprints: Mapping[str, str], *, as_of: int) -> None:
    """Note what the tags of some objects say as of a change, and take their marks away.

    The fingerprint of one that cannot be worded is empty. An object that changed after that, or
    that somebody else has noted meanwhile, is left alone.
    """
    rows: list[dict[str, object]] = []
    for some in in_portions(list(fingerprints)):
        query = (
            select(objects.c.object_number, objects.c.id)
            .join(today_stale_tags, today_stale_tags.c.object_id == objects.c.id)
            .where(objects.c.object_number.in_(some), today_stale_tags.c.since <= as_of)
        )
        keys = dict(connection.execute(query).all())
        for table in (today_tags, today_stale_tags):
            connection.execute(delete(table).where(table.c.object_id.in_(keys.values())))
        rows += [
            {"object_id": key, "fingerprint": fingerprints[number]} for number, key in keys.items()
        ]
    execute_rows(connection, insert(today_tags), rows)


def load_differing_tags(connection: Connection) -> tuple[PrintedCard, ...]:
    """Load the tags on objects whose fingerprint is not the one noted, or that have none."""
    query = (
        select_cards()
        .outerjoin(today_tags, today_tags.c.object_id == printed_cards.c.object_id)
        .where(printed_cards.c.state == CardState.ATTACHED.value)
        .where(printed_cards.c.object_id.is_not(None))
        .where(
            or_(
                today_tags.c.fingerprint.is_(None),
                today_tags.c.fingerprint != printed_cards.c.fingerprint,
            )
        )
    )
    return read_cards(connection, query)
