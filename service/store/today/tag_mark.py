"""Marks the objects whose tag may say something else after a change.

Only objects that have a tag on them are marked, so a tag is asked about once more when it is
attached. Where an object lies is on no tag: what is told of containers is of no concern here.
"""

from __future__ import annotations

from collections.abc import Sequence

from sqlalchemy import Connection, Select, delete, insert, literal, select

from service.store.base.bulk import in_portions
from service.store.tables import CardState, objects, printed_cards
from service.store.today.mark import CARD_VERB, MUSEUM_VERB, Touch
from service.store.today.tables import today_stale_tags

ATTACHED_VERB = f"{CARD_VERB}{CardState.ATTACHED.value}"


def mark_stale_tags(connection: Connection, change: int, touches: Sequence[Touch]) -> None:
    """Mark the objects that a change touches, where they have a tag on them."""
    if any(touch.verb == MUSEUM_VERB for touch in touches):
        mark_all_tags_stale(connection, change)
        return
    touched = {touch.object_number for touch in touches if _concerns(touch)} - {""}
    for some in in_portions(sorted(touched)):
        named = select(objects.c.id).where(objects.c.object_number.in_(some))
        _mark(connection, change, _tagged().where(printed_cards.c.object_id.in_(named)))


def mark_all_tags_stale(connection: Connection, change: int) -> None:
    """Mark every object that has a tag on it: the museum's choices or the wording have changed."""
    _mark(connection, change, _tagged())


def _concerns(touch: Touch) -> bool:
    return touch.verb == ATTACHED_VERB or not touch.verb.startswith(CARD_VERB)


def _tagged() -> Select[tuple[int]]:
    """Begin a query for the keys of the objects that have a tag on them."""
    return (
        select(printed_cards.c.object_id)
        .where(printed_cards.c.state == CardState.ATTACHED.value)
        .where(printed_cards.c.object_id.is_not(None))
        .distinct()
    )


def _mark(connection: Connection, change: int, wanted: Select[tuple[int]]) -> None:
    connection.execute(delete(today_stale_tags).where(today_stale_tags.c.object_id.in_(wanted)))
    marks = wanted.add_columns(literal(change))
    connection.execute(insert(today_stale_tags).from_select(["object_id", "since"], marks))
