"""The cover card: tied to a garment cover, so that nobody needs to unzip it to look."""

from __future__ import annotations

from dataclasses import replace

from service.cards.card import CoverCard
from service.cards.compose.head import compose_head
from service.cards.compose.objects import choose_photo, compose_object, write_aside
from service.cards.compose.warn import is_discreet, warn_outside
from service.cards.fingerprint import seal_card
from service.cards.parts import Handling
from service.cards.words import join_words
from service.contents.packing import PackedObject, Packing
from service.records.record import ContainerKind, Museum, PhotoRole


def compose_cover_card(packing: Packing, museum: Museum) -> CoverCard:
    """Word the cover card of a packing that holds at least one object.

    The first object is the garment; whatever else lies in the cover is named beside it.
    """
    main, *others = packing.everything
    discreet = is_discreet(main)
    card = CoverCard(
        head=compose_head(packing, museum),
        handling=_name_every_object(warn_outside(packing, museum)),
        main=compose_object(main),
        others=tuple(compose_object(packed) for packed in others),
        object_name="" if discreet else main.record.object_name,
        period="" if discreet else main.record.period,
        hang_advice=_advise_hanging(packing),
        back_photo="" if discreet else _second_photo(main),
        accessories=() if discreet else main.record.accessories,
        notes=() if discreet else _list_notes(main),
    )
    return seal_card(card, dated=True)


def _name_every_object(handling: Handling) -> Handling:
    """Let every hazard name its objects: no marks stand beside them on this card."""
    hazards = tuple(replace(warn, unmarked=warn.pointers) for warn in handling.hazards)
    return replace(handling, hazards=hazards)


def _second_photo(packed: PackedObject) -> str:
    return choose_photo(packed, PhotoRole.BACK) or choose_photo(packed, PhotoRole.DETAIL)


def _advise_hanging(packing: Packing) -> str:
    """Repeat what the records say on hanging; a record that is silent advises to ask."""
    cautions = {code for packed in packing.everything for code in packed.record.cautions}
    if "do-not-hang" in cautions or "keep-flat" in cautions:
        return "Do not hang: keep flat"
    if packing.container.kind is ContainerKind.GARMENT_COVER:
        return "Hung in its cover: lift by the hanger, support the hem"
    return "Hanging not assessed: ask first"


def _list_notes(packed: PackedObject) -> tuple[str, ...]:
    record = packed.record
    materials = join_words(record.materials, between=", ")
    aside = write_aside(packed)
    notes = (
        aside[:1].upper() + aside[1:],
        f"Materials: {materials}" if materials else "",
        f"Condition: {record.condition}" if record.condition else "",
        record.handling_notes,
    )
    return tuple(note for note in notes if note)
