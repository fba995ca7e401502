"""The kinds of card, and which of them a container gets."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from service.cards.card import Card
from service.cards.compose.contents_list import compose_contents_list
from service.cards.compose.cover_card import compose_cover_card
from service.cards.compose.end_label import compose_end_labels
from service.cards.compose.lid_card import compose_lid_card
from service.cards.second.add import add_second_words
from service.cards.second.phrasebook import Phrasebook
from service.contents.packing import Packing
from service.errors import UnknownCardKindError
from service.records.record import ContainerKind, Lid, Museum


@dataclass(frozen=True, slots=True)
class CardKind:
    """A kind of card: its code, its name, where it goes, and whether it is stuck on."""

    code: str
    name: str
    where: str
    sticky: bool


LID_CARD = CardKind(
    "lid-card", "Lid card", "in a sleeve or corners on top of the lid", sticky=False
)
END_LABEL = CardKind("end-label", "End label", "stuck on the base, short side", sticky=True)
COVER_CARD = CardKind("cover-card", "Cover card", "tied to the garment cover", sticky=False)
CONTENTS_LIST = CardKind("contents-list", "Contents list", "inside or in a binder", sticky=False)

CARD_KINDS = (LID_CARD, END_LABEL, COVER_CARD, CONTENTS_LIST)


def find_kind(code: str) -> CardKind:
    """Find a kind by its code.

    Raises:
        UnknownCardKindError: When there is none of that code.
    """
    for kind in CARD_KINDS:
        if kind.code == code:
            return kind
    raise UnknownCardKindError(code, known=[kind.code for kind in CARD_KINDS])


def kinds_for(packing: Packing) -> tuple[CardKind, ...]:
    """Say which kinds a container gets: a tube has no lid, and a clear lid stays uncovered."""
    container = packing.container
    if container.kind is ContainerKind.GARMENT_COVER:
        return (COVER_CARD, CONTENTS_LIST) if packing.everything else (CONTENTS_LIST,)
    kinds = [END_LABEL, CONTENTS_LIST]
    if container.kind is ContainerKind.FOLDER:
        kinds = [LID_CARD]
    elif container.kind is ContainerKind.BOX and container.lid is Lid.OPAQUE:
        kinds = [LID_CARD, END_LABEL, CONTENTS_LIST]
    return tuple(kinds)


def compose_cards(
    packing: Packing,
    museum: Museum,
    *,
    kinds: Sequence[CardKind],
    phrasebook: Phrasebook | None = None,
) -> tuple[Card, ...]:
    """Compose the cards of a container: those of `kinds` that it gets, in the order of reading.

    With a `phrasebook` words of handling stand in a second language beside the English.
    """
    cards: list[Card] = []
    for kind in kinds_for(packing):
        if kind not in kinds:
            continue
        if kind == LID_CARD:
            cards.append(compose_lid_card(packing, museum))
        elif kind == END_LABEL:
            cards.extend(compose_end_labels(packing, museum))
        elif kind == COVER_CARD:
            cards.append(compose_cover_card(packing, museum))
        else:
            cards.append(compose_contents_list(packing, museum))
    if phrasebook is None:
        return tuple(cards)
    return tuple(add_second_words(card, phrasebook) for card in cards)
