"""Names what today's card beside a printed one says, without wording it."""

from __future__ import annotations

from collections.abc import Iterable

from sqlalchemy import Connection, and_, select

from service.store.base.bulk import in_portions
from service.store.tables import containers, printed_cards
from service.store.today.tables import today_cards, today_tags


def load_beside(connection: Connection, card_ids: Iterable[int]) -> dict[int, tuple[str, int]]:
    """Load fingerprint and revision of today's card beside each printed one, by its number.

    A tag is of no revision: its is 0. Printed cards of which nothing is noted are left out.
    """
    found: dict[int, tuple[str, int]] = {}
    of_containers = (
        select(printed_cards.c.id, today_cards.c.fingerprint, containers.c.revision)
        .join(containers, containers.c.id == printed_cards.c.container_id)
        .join(
            today_cards,
            and_(
                today_cards.c.container_id == printed_cards.c.container_id,
                today_cards.c.kind == printed_cards.c.kind,
                today_cards.c.side == printed_cards.c.side,
            ),
        )
    )
    of_objects = select(printed_cards.c.id, today_tags.c.fingerprint).join(
        today_tags, today_tags.c.object_id == printed_cards.c.object_id
    )
    for some in in_portions(list(card_ids)):
        one_of = printed_cards.c.id.in_(some)
        for card_id, fingerprint, revision in connection.execute(of_containers.where(one_of)):
            found[card_id] = (fingerprint, revision)
        for card_id, fingerprint in connection.execute(of_objects.where(one_of)):
            found[card_id] = (fingerprint, 0)
    return found
