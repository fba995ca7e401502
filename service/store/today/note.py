"""Keeps the fingerprints of today's cards, and says which attached cards differ from them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass
from typing import Any, TypeVar

from sqlalchemy import ColumnElement, Connection, Select, and_, delete, exists, insert, or_, select

from service.store.base.bulk import execute_rows
from service.store.printed.card import PrintedCard
from service.store.printed.runs import read_cards, select_cards
from service.store.tables import CardState, containers, printed_cards
from service.store.today.mark import mark_all_stale
from service.store.today.stale import CARDS, count_changes, take_up
from service.store.today.tables import today_cards, today_wording
from service.store.today.tag_mark import mark_all_tags_stale

Columns = TypeVar("Columns", bound="tuple[Any, ...]")


@dataclass(frozen=True, slots=True)
class Noted:
    """What one card says today; a `standing` one is missed where it is not attached."""

    fingerprint: str
    standing: bool = True


Fingerprints = Mapping[tuple[str, int], Noted]
"""What each card of a container says, by kind and side."""


@dataclass(frozen=True, slots=True)
class Unattached:
    """A card that a container should have and has not; `is_made` where one only waits."""

    container_number: str
    kind: str
    side: int
    is_made: bool


def heed_wording(connection: Connection, sha256: str) -> bool:
    """Mark everything where cards are worded by other rules than before; tell whether so."""
    kept = connection.execute(select(today_wording.c.sha256)).scalar()
    if kept == sha256:
        return False
    changes = count_changes(connection)
    mark_all_stale(connection, changes)
    mark_all_tags_stale(connection, changes)
    connection.execute(delete(today_wording))
    connection.execute(insert(today_wording).values(id=1, sha256=sha256))
    return True


def load_wording(connection: Connection) -> str:
    """Give by which wording the note was made; empty where there is none yet."""
    return connection.execute(select(today_wording.c.sha256)).scalar() or ""


def save_today(
    connection: Connection, fingerprints: Mapping[str, Fingerprints], *, as_of: int
) -> None:
    """Note what the cards of some containers say as of a change, and take their marks away.

    A container that changed after that, or that somebody else has noted meanwhile, is left alone.
    """
    keys = take_up(connection, CARDS, list(fingerprints), as_of=as_of)
    rows = [
        {"container_id": key, "kind": kind, "side": side, **asdict(noted)}
        for number, key in keys.items()
        for (kind, side), noted in fingerprints[number].items()
    ]
    execute_rows(connection, insert(today_cards), rows)


def load_differing(connection: Connection) -> tuple[PrintedCard, ...]:
    """Load the cards on containers whose fingerprint is not the one noted, or that have none."""
    return read_cards(connection, _where_differing(select_cards()))


def select_differing() -> Select[tuple[int]]:
    """Begin a query for the same with the keys of containers alone, one row a card."""
    return _where_differing(select(printed_cards.c.container_id).select_from(printed_cards))


def _where_differing(query: Select[Columns]) -> Select[Columns]:
    return (
        query.outerjoin(today_cards, _is_same_card())
        .where(printed_cards.c.state == CardState.ATTACHED.value)
        .where(printed_cards.c.container_id.is_not(None))
        .where(
            or_(
                today_cards.c.fingerprint.is_(None),
                today_cards.c.fingerprint != printed_cards.c.fingerprint,
            )
        )
    )


def load_unattached(
    connection: Connection, container_numbers: Sequence[str] | None = None
) -> tuple[Unattached, ...]:
    """List the cards that containers should have and have not, in natural order of containers."""
    attached = exists().where(_is_same_card(), printed_cards.c.state == CardState.ATTACHED.value)
    made = exists().where(_is_same_card(), printed_cards.c.state == CardState.MADE.value)
    query = (
        select(
            containers.c.container_number,
            today_cards.c.kind,
            today_cards.c.side,
            made.label("made"),
        )
        .join(today_cards, today_cards.c.container_id == containers.c.id)
        .where(~attached, today_cards.c.standing)
        .order_by(containers.c.sort_key, containers.c.id, today_cards.c.kind, today_cards.c.side)
    )
    if container_numbers is not None:
        query = query.where(containers.c.container_number.in_(container_numbers))
    return tuple(
        Unattached(number, kind, side, bool(is_made))
        for number, kind, side, is_made in connection.execute(query)
    )


def _is_same_card() -> ColumnElement[bool]:
    return and_(
        today_cards.c.container_id == printed_cards.c.container_id,
        today_cards.c.kind == printed_cards.c.kind,
        today_cards.c.side == printed_cards.c.side,
    )
