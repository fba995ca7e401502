"""Words one object the way the outside of a container shows it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from service.cards.compose.warn import is_discreet, is_restricted, mark_object
from service.cards.parts import CardObject
from service.cards.words import join_words
from service.contents.arrange import find_cell
from service.contents.packing import PackedObject, Packing
from service.printed import to_print
from service.records.record import PhotoRole

ASK_WORDS = to_print("Do not open: ask first")
RESTRICTED_WORDS = to_print("Restricted: ask first")
NO_PHOTO_WORDS = to_print("no photo yet")
NOT_SHOWN = to_print("not shown")
"""What stands in a photo frame where the object may not be pictured."""


def compose_object(packed: PackedObject, *, inside: str = "") -> CardObject:
    """Word one object for the outside; `inside` names the nested container it lies in."""
    record = packed.record
    discreet = is_discreet(packed)
    photo = "" if discreet else choose_photo(packed, PhotoRole.FRONT)
    place = join_words((inside, packed.place.compartment), between=" ")
    return CardObject(
        object_number=record.object_number,
        title=name_outside(packed),
        photo=photo,
        photo_words="" if photo else (NOT_SHOWN if discreet else NO_PHOTO_WORDS),
        place=place,
        cell=None if inside else find_cell(packed.place.compartment),
        aside="" if discreet else write_aside(packed),
        marks=mark_object(packed),
    )


def without_photo(item: CardObject) -> CardObject:
    """Give an object for a card that shows no photos: another photo changes nothing on it."""
    words = item.photo_words if item.photo_words == NOT_SHOWN else ""
    return replace(item, photo="", photo_words=words)


def locate_objects(packing: Packing) -> Iterator[tuple[PackedObject, str]]:
    """Give each object with its place in full words, those of nested containers last."""
    for packed in packing.contents:
        layer = (
            to_print("layer {layer}", layer=packed.place.layer) if len(packing.layers) > 1 else ""
        )
        yield packed, join_words((layer, packed.place.compartment), between=" ")
    for inner in packing.nested:
        number = inner.container.container_number
        for packed in inner.everything:
            yield packed, join_words((number, packed.place.compartment), between=" ")


def name_outside(packed: PackedObject) -> str:
    """Name an object for the outside: of a discreet one only that somebody must be asked."""
    return _discreet_words(packed) if is_discreet(packed) else name_object(packed)


def is_hidden(title: str) -> bool:
    """Tell whether words stand in the place of a title that may not stand outside."""
    return title in (ASK_WORDS, RESTRICTED_WORDS)


def name_object(packed: PackedObject) -> str:
    """Give the title, else the object name, else say that there is none."""
    record = packed.record
    if not packed.known:
        return to_print("not in the records")
    return record.title or record.object_name or to_print("no title recorded")


def choose_photo(packed: PackedObject, role: PhotoRole) -> str:
    """Give the file of the first photo of a role; for the front any photo will do."""
    photos = packed.record.photos
    wanted = [photo.file for photo in photos if photo.role is role]
    if not wanted and role is PhotoRole.FRONT:
        wanted = [photo.file for photo in photos]
    return wanted[0] if wanted else ""


def write_aside(packed: PackedObject) -> str:
    """Say which parts lie here and where the others are."""
    here = (
        to_print("here: {parts}", parts=", ".join(packed.place.parts)) if packed.place.parts else ""
    )
    others = [
        to_print("{parts} in {where}", parts=", ".join(parts) or to_print("rest"), where=where)
        for parts, where in packed.elsewhere
    ]
    return join_words((here, *others, packed.place.note), between="; ")


def _discreet_words(packed: PackedObject) -> str:
    return RESTRICTED_WORDS if is_restricted(packed) else ASK_WORDS
