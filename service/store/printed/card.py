"""A printed card as the store keeps it: what it said, on which run, and what became of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from datetime import datetime

from service.cards.card import Card, EndLabel
from service.cards.fingerprint import fingerprint_card
from service.store.canonical import dump_json
from service.store.history import Entry
from service.store.tables import CardState


@dataclass(frozen=True, slots=True)
class MadeCard:
    """A card as it was printed: `content` is what it says, as canonical JSON."""

    container_number: str
    kind: str
    revision: int
    fingerprint: str
    content: str
    side: int = 1
    copy: int = 1


@dataclass(frozen=True, slots=True)
class RunFile:
    """One PDF of a run, by the SHA-256 of its bytes."""

    name: str
    sha256: str
    length_bytes: int


@dataclass(frozen=True, slots=True)
class NewRun:
    """What a print run made, and what was asked for."""

    cards: tuple[MadeCard, ...]
    files: tuple[RunFile, ...] = ()
    options: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class PrintedCard:
    """A printed card with its keys, what became of it, who said so and when."""

    card_id: int
    run_id: int
    made: MadeCard
    state: CardState
    by: str
    at: datetime


def describe_card(card: Card, *, copy: int = 1) -> MadeCard:
    """Describe a composed card for the record of its run."""
    return MadeCard(
        container_number=card.head.container_number,
        kind=card.kind,
        revision=card.head.revision,
        fingerprint=fingerprint_card(card),
        # Whole, defaults too: what was printed stays what it was when a default changes.
        content=dump_json(asdict(card)),
        side=card.side if isinstance(card, EndLabel) else 1,
        copy=copy,
    )


def tell_card(state: CardState, card: MadeCard, run_id: int) -> Entry:
    """Say of a printed card what the history keeps of it."""
    detail = {"kind": card.kind, "side": card.side, "copy": card.copy, "run": run_id}
    return Entry(
        f"card {state.value}",
        container_number=card.container_number,
        revision=card.revision,
        detail=dump_json(detail),
    )
