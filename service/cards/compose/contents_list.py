"""The contents list: everything in full words, for the inside of a container or a binder."""

from __future__ import annotations

from collections.abc import Iterable

from service.cards.card import ContentsList, ListEntry
from service.cards.compose.head import compose_head
from service.cards.compose.objects import (
    NO_PHOTO_WORDS,
    NOT_SHOWN,
    choose_photo,
    locate_objects,
    name_object,
    write_aside,
)
from service.cards.compose.warn import is_restricted
from service.cards.fingerprint import seal_card
from service.cards.words import count, join_words, write_date
from service.contents.packing import PackedObject, Packing
from service.contents.weights import weigh_packing
from service.handling.cautions import find_caution
from service.handling.hazards import name_hazard, word_hazard
from service.handling.lifting import advise_lift, format_kg
from service.printed import to_print
from service.records.museum.region import Region
from service.records.record import Hazard, Museum, PhotoRole, WeightBasis


def compose_contents_list(packing: Packing, museum: Museum) -> ContentsList:
    """Word the contents list of a packing, nested containers after what lies loose."""
    entries = tuple(
        _compose_entry(packed, place, museum.region) for packed, place in locate_objects(packing)
    )
    card = ContentsList(
        head=compose_head(packing, museum),
        lift=advise_lift(weigh_packing(packing), packing.container, museum.lifting),
        count_words=count(len(packing.everything), "object"),
        entries=entries,
        notes=_container_notes(packing),
    )
    return seal_card(card, dated=True)


def _compose_entry(packed: PackedObject, place: str, region: Region) -> ListEntry:
    record = packed.record
    restricted = is_restricted(packed)
    photo = "" if restricted else choose_photo(packed, PhotoRole.FRONT)
    return ListEntry(
        place=place,
        object_number=record.object_number,
        title=name_object(packed),
        details=tuple(_write_details(packed)),
        hazards=tuple(_write_hazard(hazard, region) for hazard in record.hazards),
        photo=photo,
        photo_words="" if photo else (NOT_SHOWN if restricted else NO_PHOTO_WORDS),
    )


def _write_details(packed: PackedObject) -> Iterable[str]:
    record = packed.record
    cautions = join_words((find_caution(code).name for code in record.cautions), between=", ")
    lines = (
        join_words((record.object_name if record.title else "", record.period)),
        join_words((_write_parts(packed), join_words(record.materials, between=", "))),
        join_words((record.dimensions_text, _write_weight(packed))),
        to_print("Condition: {condition}", condition=record.condition) if record.condition else "",
        cautions,
        record.handling_notes,
        to_print("With it: {accessories}", accessories=join_words(record.accessories, between="; "))
        if record.accessories
        else "",
        to_print(
            "Former numbers: {former_numbers}", former_numbers=", ".join(record.former_numbers)
        )
        if record.former_numbers
        else "",
        write_aside(packed),
    )
    return (line for line in lines if line)


def _write_parts(packed: PackedObject) -> str:
    named = [f"{part.mark} {part.name}".strip() for part in packed.record.parts]
    total = packed.record.number_of_parts
    return join_words((count(total, "part") if total else "", ", ".join(named)), between=": ")


def _write_weight(packed: PackedObject) -> str:
    weight = packed.record.weight
    if weight is None:
        return to_print("not weighed")
    estimated = weight.basis is WeightBasis.ESTIMATED
    words = format_kg(weight.weight_g)
    return (
        to_print("about {weight} kg", weight=words)
        if estimated
        else to_print("{weight} kg", weight=words)
    )


def _write_hazard(hazard: Hazard, region: Region) -> str:
    entry = word_hazard(hazard)
    checked = join_words(
        (
            hazard.method,
            write_date(hazard.checked_on) if hazard.checked_on else "",
            hazard.checked_by,
            to_print("review {review_on}", review_on=write_date(hazard.review_on))
            if hazard.review_on
            else "",
        ),
        between=", ",
    )
    name = name_hazard(hazard) + (f" ({checked})" if checked else "")
    note = hazard.note[:1].upper() + hazard.note[1:]
    ask = to_print("Ask {whom}", whom=entry.consult.in_region(region))
    sentences = (name, note, entry.instruction, entry.protection, ask)
    return " ".join(f"{words.rstrip('.')}." for words in sentences if words)


def _container_notes(packing: Packing) -> tuple[str, ...]:
    container = packing.container
    materials = join_words(container.packing_materials, between=", ")
    notes = (
        to_print("Packed with: {materials}", materials=materials) if materials else "",
        to_print(
            "Temporary: repack by {temporary_until}",
            temporary_until=write_date(container.temporary_until),
        )
        if container.temporary_until
        else "",
        container.handling_notes,
        to_print("Reason of this packing: {reason}", reason=packing.reason)
        if packing.reason
        else "",
    )
    return tuple(note for note in notes if note)
