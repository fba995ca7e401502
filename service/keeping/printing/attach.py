"""Saying what became of printed cards: on their containers, or spoiled."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from service.cards.fingerprint import check_letters
from service.errors import NotFoundError, WrongContainerError
from service.sentence import Sentence
from service.store.handles import Connection
from service.store.history import Stamp
from service.store.printed.card import PrintedCard
from service.store.printed.runs import find_printed, load_card, load_run
from service.store.printed.states import mark_attached, mark_waiting
from service.store.tables import CardState


@dataclass(frozen=True, slots=True)
class ScannedCard:
    """What the symbol of a dated card says: its container, revision and check letters."""

    container_number: str
    revision: int
    letters: str


@dataclass(frozen=True, slots=True)
class Attached:
    """A card that is on its container now, and the one it replaces there, if any."""

    card: PrintedCard
    replaced: PrintedCard | None


def attach_scanned(
    connection: Connection, scanned: ScannedCard, *, container_number: str, stamp: Stamp
) -> Attached:
    """Mark a card as attached to the container that was scanned with it.

    Of several copies one that waits is taken, the newest first.

    Raises:
        WrongContainerError: When the card is that of another container.
        NotFoundError: When no such card was printed.
        CardStateError: When it is spoiled.
    """
    if scanned.container_number != container_number:
        raise WrongContainerError(scanned.container_number, container_number=container_number)
    printed = find_printed(connection, container_number)
    alike = [card for card in printed if _is_scanned(card, scanned)]
    if not alike:
        name = f"{container_number} r{scanned.revision} {scanned.letters}"
        raise NotFoundError(name, what="printed card")
    chosen = min(alike, key=lambda card: (_LIKELIEST.index(card.state), -card.card_id))
    return attach_card(connection, chosen.card_id, stamp=stamp)


def attach_card(connection: Connection, card_id: int, *, stamp: Stamp) -> Attached:
    """Mark a card as attached to its container.

    Raises:
        NotFoundError: When there is no such printed card.
        CardStateError: When it is spoiled.
    """
    replaced = mark_attached(connection, card_id, stamp=stamp)
    return Attached(load_card(connection, card_id), replaced)


def attach_run(connection: Connection, run_id: int, *, stamp: Stamp) -> tuple[Attached, ...]:
    """Mark every card of a run as attached that waits still; of several copies the first.

    Raises:
        NotFoundError: When there is no such run.
    """
    cards = load_run(connection, run_id)
    if not cards:
        raise NotFoundError(str(run_id), what="print run")
    waiting = [card for card in cards if card.state is CardState.MADE]
    return tuple(
        attach_card(connection, card.card_id, stamp=stamp) for card in _first_copies(waiting)
    )


def take_back(
    connection: Connection, card_id: int, *, replaced: int | None = None, stamp: Stamp
) -> PrintedCard:
    """Take back that a card was attached: it waits again, and the one it replaced is on again.

    Raises:
        NotFoundError: When there is no such printed card, or the other one is not of its place.
        CardStateError: When it is not attached.
    """
    card = load_card(connection, card_id)
    if replaced is not None and load_card(connection, replaced).made.key != card.made.key:
        raise NotFoundError(
            str(replaced), what=Sentence("earlier card of {number}", number=card.made.number)
        )
    mark_waiting(connection, card_id, stamp=stamp)
    if replaced is not None:
        mark_attached(connection, replaced, stamp=stamp)
    return load_card(connection, card_id)


_LIKELIEST = (CardState.MADE, CardState.ATTACHED, CardState.WITHDRAWN, CardState.SPOILED)


def _is_scanned(card: PrintedCard, scanned: ScannedCard) -> bool:
    letters = check_letters(card.made.fingerprint)
    return (card.made.revision, letters) == (scanned.revision, scanned.letters.strip().upper())


def _first_copies(cards: Sequence[PrintedCard]) -> list[PrintedCard]:
    first = {card.made.key: card for card in reversed(cards)}
    chosen = {card.card_id for card in first.values()}
    return [card for card in cards if card.card_id in chosen]
