"""The kinds of card, and which of them a container gets."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from service.cards.card import Card
from service.cards.compose.asked.object_tag import compose_object_tags
from service.cards.compose.asked.shoulder_tag import compose_shoulder_tag
from service.cards.compose.asked.side_card import compose_side_card
from service.cards.compose.asked.warning_label import compose_warning_label, has_hazards
from service.cards.compose.contents_list import compose_contents_list
from service.cards.compose.cover_card import compose_cover_card
from service.cards.compose.end_label import compose_end_labels
from service.cards.compose.lid_card import compose_lid_card
from service.cards.second.add import add_second_words
from service.cards.second.phrasebook import Phrasebook
from service.contents.packing import Packing
from service.errors import UnknownCardKindError
from service.printed import to_print
from service.records.record import ContainerKind, Lid, Museum


@dataclass(frozen=True, slots=True)
class CardKind:
    """A kind of card: its code, its name, where it goes, and whether it is stuck on.

    A container that gets a `standing` kind is expected to carry it; the others are printed only
    when somebody asks for them, and none is missed.
    """

    code: str
    name: str
    where: str
    sticky: bool
    standing: bool = True


LID_CARD = CardKind(
    "lid-card",
    to_print("Lid card"),
    to_print("in a sleeve or corners on top of the lid"),
    sticky=False,
)
END_LABEL = CardKind(
    "end-label", to_print("End label"), to_print("stuck on the base, short side"), sticky=True
)
COVER_CARD = CardKind(
    "cover-card", to_print("Cover card"), to_print("tied to the garment cover"), sticky=False
)
CONTENTS_LIST = CardKind(
    "contents-list", to_print("Contents list"), to_print("inside or in a binder"), sticky=False
)

SIDE_CARD = CardKind(
    "side-card", to_print("Side card"), to_print("in a sleeve on a side of the box"), sticky=False
)
WARNING_LABEL = CardKind(
    "warning-label",
    to_print("Warning label"),
    to_print("stuck on the outer box, crate or shelf"),
    sticky=True,
    standing=False,
)
SHOULDER_TAG = CardKind(
    "shoulder-tag",
    to_print("Shoulder tag"),
    to_print("tied to the hanger, edge on"),
    sticky=False,
    standing=False,
)
OBJECT_TAG = CardKind(
    "object-tag",
    to_print("Object tag"),
    to_print("tied to the object"),
    sticky=False,
    standing=False,
)

CARD_KINDS = (
    LID_CARD,
    END_LABEL,
    SIDE_CARD,
    COVER_CARD,
    CONTENTS_LIST,
    WARNING_LABEL,
    SHOULDER_TAG,
    OBJECT_TAG,
)
"""Every kind, in the order of reading."""

KEPT_KINDS = tuple(kind for kind in CARD_KINDS if kind != OBJECT_TAG)
"""The kinds that belong to a container: a tag belongs to its object, wherever that lies."""


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
    """Say which kinds a container always gets: a tube has no lid, a clear lid stays uncovered."""
    container = packing.container
    if container.kind is ContainerKind.GARMENT_COVER:
        return (COVER_CARD, CONTENTS_LIST) if packing.everything else (CONTENTS_LIST,)
    if container.kind is ContainerKind.FOLDER:
        return (LID_CARD,)
    if container.kind is ContainerKind.BOX and container.lid is Lid.OPAQUE:
        return (LID_CARD, END_LABEL, CONTENTS_LIST)
    if container.kind is ContainerKind.BOX and container.lid is Lid.CLEAR:
        return (END_LABEL, SIDE_CARD, CONTENTS_LIST)
    return (END_LABEL, CONTENTS_LIST)


def kinds_on_request(packing: Packing) -> tuple[CardKind, ...]:
    """Say which further kinds a container can get when somebody asks for them."""
    kind = packing.container.kind
    fitting = {
        SIDE_CARD: kind in _HAS_SIDES and SIDE_CARD not in kinds_for(packing),
        WARNING_LABEL: has_hazards(packing),
        SHOULDER_TAG: kind is ContainerKind.GARMENT_COVER and bool(packing.everything),
        OBJECT_TAG: any(packed.known for packed in packing.everything),
    }
    return tuple(one for one in fitting if fitting[one])


def compose_cards(
    packing: Packing,
    museum: Museum,
    *,
    kinds: Sequence[CardKind] = (),
    phrasebook: Phrasebook | None = None,
) -> tuple[Card, ...]:
    """Compose the cards of a container, in the order of reading.

    Where no `kinds` are named it gets those it always gets, else those of them it can get. With a
    `phrasebook` words of handling stand in a second language beside the English.
    """
    standing = kinds_for(packing)
    possible = (*standing, *kinds_on_request(packing)) if kinds else standing
    cards = (
        card
        for kind in CARD_KINDS
        if kind in possible and (kind in kinds or not kinds)
        for card in _COMPOSERS[kind](packing, museum)
    )
    return tuple(add_second_words(card, phrasebook) if phrasebook else card for card in cards)


def _one(compose: Callable[[Packing, Museum], Card]) -> _Compose:
    return lambda packing, museum: (compose(packing, museum),)


_HAS_SIDES = frozenset({ContainerKind.BOX, ContainerKind.DRAWER, ContainerKind.TUBE})
_Compose = Callable[[Packing, Museum], Iterable[Card]]
_COMPOSERS: dict[CardKind, _Compose] = {
    LID_CARD: _one(compose_lid_card),
    END_LABEL: compose_end_labels,
    SIDE_CARD: _one(compose_side_card),
    COVER_CARD: _one(compose_cover_card),
    CONTENTS_LIST: _one(compose_contents_list),
    WARNING_LABEL: _one(compose_warning_label),
    SHOULDER_TAG: _one(compose_shoulder_tag),
    OBJECT_TAG: compose_object_tags,
}
