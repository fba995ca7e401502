"""Saves and loads print runs and their cards."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import astuple

from sqlalchemy import Column, Connection, Select, insert, select

from service.errors import NotFoundError
from service.store.base.bulk import execute_rows, in_portions, load_keys
from service.store.canonical import dump_json
from service.store.history import Change, Stamp, begin_change, write_history
from service.store.printed.card import (
    MadeCard,
    NewRun,
    PrintedCard,
    RunFile,
    RunRecord,
    tell_card,
)
from service.store.tables import (
    CardState,
    actors,
    containers,
    objects,
    print_runs,
    printed_cards,
)

_OWNERS = ("container_id", "object_id")


def save_run(connection: Connection, run: NewRun, *, stamp: Stamp) -> tuple[PrintedCard, ...]:
    """Save a run whose files are finished; its cards are made, and attached by nobody yet.

    Raises:
        NotFoundError: When a card's container, or a tag's object, is not in the store.
    """
    change = begin_change(connection, stamp)
    keys = _load_keys(connection, run.cards)
    run_id = connection.execute(
        insert(print_runs)
        .values(
            at=stamp.at,
            actor_id=change.actor_id,
            options=dump_json(dict(run.options)),
            files=dump_json([astuple(file) for file in run.files]),
        )
        .returning(print_runs.c.id)
    ).scalar_one()
    rows = [{**_row(card, run_id, change), **_find_owner(card, keys)} for card in run.cards]
    execute_rows(connection, insert(printed_cards), rows)
    write_history(
        connection, change, [tell_card(CardState.MADE, card, run_id) for card in run.cards]
    )
    return load_run(connection, run_id)


def load_run_record(connection: Connection, run_id: int) -> RunRecord:
    """Load who made a run, when, what was asked for, and its files.

    Raises:
        NotFoundError: When there is no such run.
    """
    for record in _read_runs(connection, _run_query().where(print_runs.c.id == run_id)):
        return record
    raise NotFoundError(str(run_id), what="print run")


def list_runs(
    connection: Connection, *, limit: int = 100, before: int | None = None
) -> tuple[RunRecord, ...]:
    """List runs, the latest first; `before` is the number of the last one seen."""
    query = _run_query().order_by(print_runs.c.id.desc()).limit(limit)
    if before is not None:
        query = query.where(print_runs.c.id < before)
    return _read_runs(connection, query)


def load_run(connection: Connection, run_id: int) -> tuple[PrintedCard, ...]:
    """Load the cards of a run in the order in which they were printed."""
    return read_cards(connection, select_cards().where(printed_cards.c.run_id == run_id))


def load_card(connection: Connection, card_id: int) -> PrintedCard:
    """Load a printed card.

    Raises:
        NotFoundError: When there is none.
    """
    for card in read_cards(connection, select_cards().where(printed_cards.c.id == card_id)):
        return card
    raise NotFoundError(str(card_id), what="printed card")


def find_printed(connection: Connection, container_number: str) -> tuple[PrintedCard, ...]:
    """Load every card that was ever printed of a container, the oldest first."""
    query = select_cards().where(containers.c.container_number == container_number)
    return read_cards(connection, query)


def load_attached(
    connection: Connection, container_numbers: Sequence[str] | None = None
) -> tuple[PrintedCard, ...]:
    """Load the cards that are on their containers now: of all, or of those named."""
    return _load_attached(connection, containers.c.container_number, container_numbers)


def load_attached_tags(
    connection: Connection, object_numbers: Sequence[str] | None = None
) -> tuple[PrintedCard, ...]:
    """Load the tags that are on their objects now: of all, or of those named."""
    return _load_attached(connection, objects.c.object_number, object_numbers)


def _load_attached(
    connection: Connection, number: Column[str], numbers: Sequence[str] | None
) -> tuple[PrintedCard, ...]:
    query = select_cards().where(printed_cards.c.state == CardState.ATTACHED.value)
    if numbers is None:
        return read_cards(connection, query.where(number.is_not(None)))
    return tuple(
        card
        for some in in_portions(numbers)
        for card in read_cards(connection, query.where(number.in_(some)))
    )


_Keys = Mapping[str, Mapping[str, int]]
"""The keys of containers and objects by their numbers, by the name of what they are."""


def _load_keys(connection: Connection, cards: Sequence[MadeCard]) -> _Keys:
    boxes = sorted({card.container_number for card in cards} - {""})
    tagged = sorted({card.object_number for card in cards} - {""})
    return {
        "container": load_keys(connection, containers, "container_number", boxes),
        "object": load_keys(connection, objects, "object_number", tagged),
    }


def _find_owner(card: MadeCard, keys: _Keys) -> dict[str, int | None]:
    """Find whose card it is.

    Raises:
        NotFoundError: When that is not in the store.
    """
    what = "object" if card.object_number else "container"
    if card.number not in keys[what]:
        raise NotFoundError(card.number, what=what)
    owner = keys[what][card.number]
    return {name: owner if name == f"{what}_id" else None for name in _OWNERS}


def _row(card: MadeCard, run_id: int, change: Change) -> dict[str, object]:
    return {
        "run_id": run_id,
        "kind": card.kind,
        "side": card.side,
        "copy": card.copy,
        "revision": card.revision,
        "fingerprint": card.fingerprint,
        "content": card.content,
        "file": card.file,
        "places": dump_json(card.places),
        "state": CardState.MADE.value,
        "state_actor_id": change.actor_id,
        "state_at": change.stamp.at,
    }


def _run_query() -> Select[tuple[object, ...]]:
    return select(print_runs, actors.c.name).join(actors, print_runs.c.actor_id == actors.c.id)


def _read_runs(connection: Connection, query: Select[tuple[object, ...]]) -> tuple[RunRecord, ...]:
    return tuple(
        RunRecord(
            row["id"],
            Stamp(row["name"], row["at"]),
            json.loads(row["options"]),
            tuple(RunFile(*file) for file in json.loads(row["files"])),
        )
        for row in connection.execute(query).mappings()
    )


def select_cards() -> Select[tuple[object, ...]]:
    """Begin a query for printed cards, in the order in which they were printed."""
    return (
        select(printed_cards, containers.c.container_number, objects.c.object_number, actors.c.name)
        .outerjoin(containers, printed_cards.c.container_id == containers.c.id)
        .outerjoin(objects, printed_cards.c.object_id == objects.c.id)
        .join(actors, printed_cards.c.state_actor_id == actors.c.id)
        .order_by(printed_cards.c.id)
    )


def read_cards(
    connection: Connection, query: Select[tuple[object, ...]]
) -> tuple[PrintedCard, ...]:
    """Read the printed cards of a query that `select_cards` began."""
    return tuple(
        PrintedCard(
            card_id=row["id"],
            run_id=row["run_id"],
            made=MadeCard(
                container_number=row["container_number"] or "",
                kind=row["kind"],
                revision=row["revision"],
                fingerprint=row["fingerprint"],
                content=row["content"],
                side=row["side"],
                copy=row["copy"],
                file=row["file"],
                places=tuple((sheet, position) for sheet, position in json.loads(row["places"])),
                object_number=row["object_number"] or "",
            ),
            state=CardState(row["state"]),
            by=row["name"],
            at=row["state_at"],
        )
        for row in connection.execute(query).mappings()
    )
