"""Keeps the fingerprints of today's object tags, and says which attached tags differ from them."""

from __future__ import annotations

from collections.abc import Mapping

from sqlalchemy import Connection, insert, or_

from service.store.base.bulk import execute_rows
from service.store.printed.card import PrintedCard
from service.store.printed.runs import read_cards, select_cards
from service.store.tables import CardState, printed_cards
from service.store.today.stale import TAGS, take_up
from service.store.today.tables import today_tags


def save_today_tags(connection: Connection, fingerprints: Mapping[str, str], *, as_of: int) -> None:
    """Note what the tags of some objects say as of a change, and take their marks away.

    The fingerprint of one that cannot be worded is empty. An object that changed after that, or
    that somebody else has noted meanwhile, is left alone.
    """
    keys = take_up(connection, TAGS, list(fingerprints), as_of=as_of)
    rows = [{"object_id": key, "fingerprint": fingerprints[number]} for number, key in keys.items()]
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
