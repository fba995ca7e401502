"""A printed card as the store keeps it: what it said, on which run, and what became of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime

from service.cards.card import Card, EndLabel, ObjectTag
from service.cards.fingerprint import fingerprint_card
from service.cards.kept_text import card_as_text
from service.store.canonical import check_text, dump_json
from service.store.history import Entry, Stamp
from service.store.tables import CardState


@dataclass(frozen=True, slots=True)
class MadeCard:
    """A card as it was printed: `content` is what it says, as canonical JSON.

    `file` names the PDF in its run; `places` are the sheet and position there of each of its faces.
    A tag is that of an object: it has an `object_number`, and no container number.
    """

    container_number: str
    kind: str
    revision: int
    fingerprint: str
    content: str
    side: int = 1
    copy: int = 1
    file: str = ""
    places: tuple[tuple[int, int], ...] = ()
    object_number: str = ""

    @property
    def number(self) -> str:
        """The number of the container, or of the object that a tag is tied to."""
        return self.object_number or self.container_number

    @property
    def key(self) -> tuple[str, str, int]:
        """Which card of what it is: number, kind and side."""
        return (self.number, self.kind, self.side)


@dataclass(frozen=True, slots=True)
class RunFile:
    """One PDF of a run, by the SHA-256 of its bytes, and the name of the stock it is for."""

    name: str
    sha256: str
    length_bytes: int
    stock: str = ""


@dataclass(frozen=True, slots=True)
class NewRun:
    """What a print run made, and what was asked for."""

    cards: tuple[MadeCard, ...]
    files: tuple[RunFile, ...] = ()
    options: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class RunRecord:
    """A run as it is kept: its number, who made it and when, what was asked for, its files."""

    run_id: int
    stamp: Stamp
    options: Mapping[str, str]
    files: tuple[RunFile, ...]


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
        content=check_text(card_as_text(card)),
        side=card.side if isinstance(card, EndLabel) else 1,
        copy=copy,
        object_number=card.object_number if isinstance(card, ObjectTag) else "",
    )


def tell_card(state: CardState, card: MadeCard, run_id: int) -> Entry:
    """Say of a printed card what the history keeps of it; a tag is of no revision."""
    detail = {"kind": card.kind, "side": card.side, "copy": card.copy, "run": run_id}
    return Entry(
        f"card {state.value}",
        container_number=card.container_number,
        object_number=card.object_number,
        revision=None if card.object_number else card.revision,
        detail=dump_json(detail),
    )
