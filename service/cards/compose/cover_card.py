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
from service.handling.hanging.assess import HangAdvice, HangWay, assess_hanging
from service.printed import to_print
from service.records.record import Museum, PhotoRole


def compose_cover_card(packing: Packing, museum: Museum) -> CoverCard:
    """Word the cover card of a packing that holds at least one object.

    The first object is the garment; whatever else lies in the cover is named beside it.
    """
    main, *others = packing.everything
    discreet = is_discreet(main)
    decisive, advice = _advise_hanging(packing)
    card = CoverCard(
        head=compose_head(packing, museum),
        handling=_name_every_object(warn_outside(packing, museum)),
        main=compose_object(main),
        others=tuple(compose_object(packed) for packed in others),
        object_name="" if discreet else main.record.object_name,
        period="" if discreet else main.record.period,
        hang_advice=_word_advice(decisive, advice, main),
        back_photo="" if discreet else _second_photo(main),
        accessories=() if discreet else main.record.accessories,
        notes=() if discreet else _list_notes(main),
        hang_reason="" if is_discreet(decisive) else join_words(advice.reasons, between=", "),
    )
    return seal_card(card, dated=True)


def _name_every_object(handling: Handling) -> Handling:
    """Let every hazard name its objects: no marks stand beside them on this card."""
    hazards = tuple(replace(warn, unmarked=warn.pointers) for warn in handling.hazards)
    return replace(handling, hazards=hazards)


def _second_photo(packed: PackedObject) -> str:
    return choose_photo(packed, PhotoRole.BACK) or choose_photo(packed, PhotoRole.DETAIL)


def _advise_hanging(packing: Packing) -> tuple[PackedObject, HangAdvice]:
    """Advise for the whole cover: what must lie flat decides, else the garment itself."""
    advised = [(packed, assess_hanging(packed.record)) for packed in packing.everything]
    flat = (each for each in advised if each[1].way is HangWay.BOX_FLAT)
    return next(flat, advised[0])


def _word_advice(decisive: PackedObject, advice: HangAdvice, main: PackedObject) -> str:
    """Give the advice, with the number in front where it is not the garment that decides."""
    if decisive is main:
        return advice.words
    return f"{decisive.record.object_number}: {advice.words[:1].lower()}{advice.words[1:]}"


def _list_notes(packed: PackedObject) -> tuple[str, ...]:
    record = packed.record
    materials = join_words(record.materials, between=", ")
    aside = write_aside(packed)
    notes = (
        aside[:1].upper() + aside[1:],
        to_print("Materials: {materials}", materials=materials) if materials else "",
        to_print("Condition: {condition}", condition=record.condition) if record.condition else "",
        record.handling_notes,
    )
    return tuple(note for note in notes if note)
