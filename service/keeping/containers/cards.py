"""The cards of one container: which are on it and true, which are wrong, and which it lacks."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from service.cards.changes.change import Change
from service.cards.fingerprint import check_letters, fingerprint_card
from service.cards.kinds import CARD_KINDS
from service.errors import ServiceError
from service.keeping.reprints import find_fault
from service.keeping.today import Today, compose_today
from service.pages.ruler import Ruler
from service.pipeline.options import CardKey
from service.store.handles import Connection
from service.store.printed.card import PrintedCard
from service.store.printed.runs import find_printed
from service.store.tables import CardState


class CardFate(StrEnum):
    """How it stands with one card of a container."""

    TRUE = "true"
    """It is on the container and says what the records say."""
    WRONG = "wrong"
    """It is on the container and no longer tells the truth."""
    WAITING = "waiting"
    """It is printed and was not yet said to be on the container."""
    LACKING = "lacking"
    """The container should have it, and none is printed."""


@dataclass(frozen=True, slots=True)
class ContainerCard:
    """One card of a container, and why it is wrong where it is; `printed` is the one that counts.

    `letters` are the check letters of the card as it would be printed now, empty where it gets
    none.
    """

    kind: str
    side: int
    fate: CardFate
    changes: tuple[Change, ...] = ()
    printed: PrintedCard | None = None
    letters: str = ""


@dataclass(frozen=True, slots=True)
class ContainerCards:
    """All cards of a container in the order of reading; `failed` where they cannot be worded."""

    cards: tuple[ContainerCard, ...]
    failed: ServiceError | None = None


def judge_cards(connection: Connection, ruler: Ruler, container_number: str) -> ContainerCards:
    """Compare what was printed of a container with what its cards would say now."""
    today = compose_today(connection, ruler, [container_number])
    printed = find_printed(connection, container_number)
    cards = [
        *_judge_attached(printed, today),
        *_judge_standing(printed, today),
    ]
    order = [kind.code for kind in CARD_KINDS]
    cards.sort(key=lambda card: (order.index(card.kind), card.side))
    return ContainerCards(tuple(cards), today.failed.get(container_number))


def _judge_attached(printed: tuple[PrintedCard, ...], today: Today) -> Iterator[ContainerCard]:
    for card in printed:
        if card.state is CardState.ATTACHED:
            changes = find_fault(card.made, today).changes
            yield ContainerCard(
                card.made.kind,
                card.made.side,
                CardFate.WRONG if changes else CardFate.TRUE,
                changes,
                card,
                _letters(today, card.made.key),
            )


def _judge_standing(printed: tuple[PrintedCard, ...], today: Today) -> Iterator[ContainerCard]:
    """Tell of the cards that should be there and are not."""
    attached = {card.made.key for card in printed if card.state is CardState.ATTACHED}
    made = {card.made.key: card for card in printed if card.state is CardState.MADE}
    for key in today.standing - attached:
        _, kind, side = key
        fate = CardFate.WAITING if key in made else CardFate.LACKING
        yield ContainerCard(kind, side, fate, (), made.get(key), _letters(today, key))


def _letters(today: Today, key: CardKey) -> str:
    card = today.cards.get(key)
    return "" if card is None else check_letters(fingerprint_card(card))
