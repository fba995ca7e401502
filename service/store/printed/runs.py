"""Saves and loads print runs and their cards."""

from __future__ import annotations

from collections.abc import Sequence

from sqlalchemy import Connection, Select, insert, select

from service.errors import NotFoundError
from service.store.bulk import execute_rows, in_portions
from service.store.canonical import dump_json
from service.store.history import Change, Stamp, begin_change, write_history
from service.store.packing.load import load_held
from service.store.printed.card import MadeCard, NewRun, PrintedCard, tell_card
from service.store.tables import CardState, actors, containers, print_runs, printed_cards


def save_run(connection: Connection, run: NewRun, *, stamp: Stamp) -> tuple[PrintedCard, ...]:
    """Save a run whose files are finished; its cards are made, and attached by nobody yet.

    Raises:
        NotFoundError: When a card's container is not in the store.
    """
    change = begin_change(connection, stamp)
    held = load_held(connection, sorted({card.container_number for card in run.cards}))
    run_id = connection.execute(
        insert(print_runs)
        .values(
            at=stamp.at,
            actor_id=change.actor_id,
            options=dump_json(dict(run.options)),
            files=dump_json([[file.name, file.sha256, file.length_bytes] for file in run.files]),
        )
        .returning(print_runs.c.id)
    ).scalar_one()
    rows = []
    for card in run.cards:
        if card.container_number not in held:
            raise NotFoundError(card.container_number, what="container")
        rows.append(_row(card, run_id, held[card.container_number].container_id, change))
    execute_rows(connection, insert(printed_cards), rows)
    write_history(
        connection, change, [tell_card(CardState.MADE, card, run_id) for card in run.cards]
    )
    return load_run(connection, run_id)


def load_run(connection: Connection, run_id: int) -> tuple[PrintedCard, ...]:
    """Load the cards of a run in the order in which they were printed."""
    return _read(connection, _query().where(printed_cards.c.run_id == run_id))


def load_card(connection: Connection, card_id: int) -> PrintedCard:
    """Load a printed card.

    Raises:
        NotFoundError: When there is none.
    """
    for card in _read(connection, _query().where(printed_cards.c.id == card_id)):
        return card
    raise NotFoundError(str(card_id), what="printed card")


def load_attached(
    connection: Connection, container_numbers: Sequence[str] | None = None
) -> tuple[PrintedCard, ...]:
    """Load the cards that are on their containers now: of all, or of those named."""
    query = _query().where(printed_cards.c.state == CardState.ATTACHED.value)
    if container_numbers is None:
        return _read(connection, query)
    return tuple(
        card
        for some in in_portions(container_numbers)
        for card in _read(connection, query.where(containers.c.container_number.in_(some)))
    )


def _row(card: MadeCard, run_id: int, container_id: int, change: Change) -> dict[str, object]:
    return {
        "run_id": run_id,
        "container_id": container_id,
        "kind": card.kind,
        "side": card.side,
        "copy": card.copy,
        "revision": card.revision,
        "fingerprint": card.fingerprint,
        "content": card.content,
        "state": CardState.MADE.value,
        "state_actor_id": change.actor_id,
        "state_at": change.stamp.at,
    }


def _query() -> Select[tuple[object, ...]]:
    return (
        select(printed_cards, containers.c.container_number, actors.c.name)
        .join(containers, printed_cards.c.container_id == containers.c.id)
        .join(actors, printed_cards.c.state_actor_id == actors.c.id)
        .order_by(printed_cards.c.id)
    )


def _read(connection: Connection, query: Select[tuple[object, ...]]) -> tuple[PrintedCard, ...]:
    return tuple(
        PrintedCard(
            card_id=row["id"],
            run_id=row["run_id"],
            made=MadeCard(
                container_number=row["container_number"],
                kind=row["kind"],
                revision=row["revision"],
                fingerprint=row["fingerprint"],
                content=row["content"],
                side=row["side"],
                copy=row["copy"],
            ),
            state=CardState(row["state"]),
            by=row["name"],
            at=row["state_at"],
        )
        for row in connection.execute(query).mappings()
    )
