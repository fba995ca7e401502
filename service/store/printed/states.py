"""What becomes of a printed card: attached, withdrawn by the next one, or spoiled."""

from __future__ import annotations

from sqlalchemy import Connection, update

from service.errors import CardStateError
from service.store.history import Change, Stamp, begin_change, write_history
from service.store.printed.card import PrintedCard, tell_card
from service.store.printed.runs import load_attached, load_attached_tags, load_card
from service.store.tables import CardState, printed_cards

_NEXT = {
    CardState.MADE: (CardState.ATTACHED,),
    CardState.ATTACHED: (CardState.MADE, CardState.WITHDRAWN),
    CardState.SPOILED: (CardState.MADE, CardState.ATTACHED, CardState.WITHDRAWN),
}
"""The states from which a person can bring a card into another."""


def mark_attached(connection: Connection, card_id: int, *, stamp: Stamp) -> PrintedCard | None:
    """Mark a card as attached, and give the one it replaces, which is withdrawn.

    One that is attached already stays so. What it replaces is the attached card of the same
    container or object, kind and side.

    Raises:
        NotFoundError: When there is no such printed card.
        CardStateError: When it is spoiled.
    """
    change = begin_change(connection, stamp)
    card = load_card(connection, card_id)
    if card.state is CardState.ATTACHED:
        return None
    _refuse_step(card, CardState.ATTACHED)
    is_tag = bool(card.made.object_number)
    load_beside = load_attached_tags if is_tag else load_attached
    beside = load_beside(connection, [card.made.number])
    earlier = next((other for other in beside if other.made.key == card.made.key), None)
    if earlier is not None:
        _step(connection, change, earlier, CardState.WITHDRAWN)
    _step(connection, change, card, CardState.ATTACHED)
    return None if earlier is None else load_card(connection, earlier.card_id)


def mark_waiting(connection: Connection, card_id: int, *, stamp: Stamp) -> None:
    """Mark a card as one that waits still: somebody said by mistake that it was attached.

    Raises:
        NotFoundError: When there is no such printed card.
        CardStateError: When it is not attached.
    """
    change = begin_change(connection, stamp)
    card = load_card(connection, card_id)
    _refuse_step(card, CardState.MADE)
    _step(connection, change, card, CardState.MADE)


def mark_spoiled(connection: Connection, card_id: int, *, stamp: Stamp) -> None:
    """Mark a card as spoiled: it is on nothing, and never will be.

    Raises:
        NotFoundError: When there is no such printed card.
        CardStateError: When it is spoiled already.
    """
    change = begin_change(connection, stamp)
    card = load_card(connection, card_id)
    _refuse_step(card, CardState.SPOILED)
    _step(connection, change, card, CardState.SPOILED)


def _refuse_step(card: PrintedCard, wanted: CardState) -> None:
    if card.state not in _NEXT[wanted]:
        raise CardStateError(card.card_id, state=card.state.value, wanted=wanted.value)


def _step(connection: Connection, change: Change, card: PrintedCard, state: CardState) -> None:
    connection.execute(
        update(printed_cards)
        .where(printed_cards.c.id == card.card_id)
        .values(state=state.value, state_actor_id=change.actor_id, state_at=change.stamp.at)
    )
    write_history(connection, change, [tell_card(state, card.made, card.run_id)])
