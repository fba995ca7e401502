"""Records that an import made anew: what keeps them in the store, and taking them out of it."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence

from sqlalchemy import Column, Connection, Select, Table, delete, select

from service.sentence import Sentence
from service.store.base.bulk import in_portions, load_keys
from service.store.kept.check_tables import checks
from service.store.lists.index import CONTAINER_WORDS, OBJECT_WORDS, forget_words
from service.store.shelf.shown import forget_shown
from service.store.tables import containers, objects, outs, packings, photos, printed_cards
from service.store.taking_back.packed import load_inner_since, why_packed
from service.store.today.tables import today_cards, today_stale, today_stale_tags, today_tags

_Query = Callable[[Sequence[str]], Select[tuple[str]]]


def why_objects_stay(
    connection: Connection, numbers: Sequence[str], *, repacked: Collection[str]
) -> dict[str, str]:
    """Say of objects what keeps them: a photo, a printed card, a slip, or a packer's hand.

    `repacked` are containers whose contents go back to what they were.
    """
    number, tag = objects.c.object_number, printed_cards.c.object_id == objects.c.id
    queries: tuple[tuple[str, _Query], ...] = (
        (
            Sentence("a photo was brought for it"),
            lambda some: (
                select(number)
                .join(photos, photos.c.object_id == objects.c.id)
                .where(photos.c.sha256 != "", number.in_(some))
            ),
        ),
        (
            Sentence("a tag was printed for it"),
            lambda some: select(number).join(printed_cards, tag).where(number.in_(some)),
        ),
        (
            Sentence("it was taken out against a slip"),
            lambda some: select(outs.c.object_number).where(outs.c.object_number.in_(some)),
        ),
    )
    used = _why(connection, numbers, queries)
    return {**used, **why_packed(connection, numbers, repacked=repacked)}


def why_containers_stay(
    connection: Connection, numbers: Sequence[str], *, going: Collection[str]
) -> dict[str, str]:
    """Say of containers what keeps them: a packing, a printed card, a check, or what is in them.

    A packing is never forgotten, so a container that has one stays, by then empty. `going` are
    the containers that keep no other by lying in it now, unless they stay themselves.
    """
    queries: tuple[tuple[str, _Query], ...] = (
        (
            Sentence("a card was printed for it"),
            lambda some: _named_by(printed_cards.c.container_id, some),
        ),
        (
            Sentence("something was taken out against a slip"),
            lambda some: _named_by(outs.c.container_id, some),
        ),
        (
            Sentence("it was looked at on the round"),
            lambda some: _named_by(checks.c.container_id, some),
        ),
        (
            Sentence("what was packed in it is part of its history"),
            lambda some: _named_by(packings.c.container_id, some),
        ),
    )
    why = _why(connection, numbers, queries)
    pairs = load_inner_since(connection, numbers)
    while True:
        staying = [outer for inner, outer in pairs if inner not in going or inner in why]
        more = {
            outer: Sentence("another container lies in it") for outer in staying if outer not in why
        }
        if not more:
            return why
        why |= more


def remove_objects(connection: Connection, numbers: Sequence[str]) -> None:
    """Take objects out, with all that is noted of them."""
    keys = list(load_keys(connection, objects, "object_number", numbers).values())
    forget_shown(connection, keys)
    forget_words(connection, OBJECT_WORDS, keys)
    owners = (today_tags.c.object_id, today_stale_tags.c.object_id, photos.c.object_id)
    _delete(connection, (*owners, objects.c.id), keys)


def remove_containers(connection: Connection, numbers: Sequence[str]) -> None:
    """Take containers out that were never packed, with all that is noted of them."""
    keys = list(load_keys(connection, containers, "container_number", numbers).values())
    forget_words(connection, CONTAINER_WORDS, keys)
    owners = (today_cards.c.container_id, today_stale.c.container_id)
    _delete(connection, (*owners, containers.c.id), keys)


def _named_by(owner: Column[int], numbers: Sequence[str]) -> Select[tuple[str]]:
    number = containers.c.container_number
    return select(number).join(owner.table, owner == containers.c.id).where(number.in_(numbers))


def _why(
    connection: Connection, numbers: Sequence[str], queries: Iterable[tuple[str, _Query]]
) -> dict[str, str]:
    return dict(_found(connection, numbers, queries))


def _found(
    connection: Connection, numbers: Sequence[str], queries: Iterable[tuple[str, _Query]]
) -> Iterator[tuple[str, str]]:
    for reason, query in queries:
        for some in in_portions(numbers):
            for number in connection.execute(query(some)).scalars():
                yield str(number), reason


def _delete(connection: Connection, owners: Iterable[Column[int]], keys: Sequence[int]) -> None:
    for owner in owners:
        table: Table = owner.table
        for some in in_portions(keys):
            connection.execute(delete(table).where(owner.in_(some)))
