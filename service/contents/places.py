"""Takes objects, or named parts of them, from a list of places."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from service.records.record import PlaceRecord

Places = tuple[PlaceRecord, ...]


def parts_taken(places: Sequence[PlaceRecord], wanted: PlaceRecord) -> tuple[str, ...] | None:
    """Name the parts that go when this is taken; none is the whole object.

    Without parts all of the object that lies there is meant. Gives None where the object, or a part
    that is named, does not lie there.
    """
    here = [place.parts for place in places if place.object_number == wanted.object_number]
    named = tuple(part for parts in here for part in parts)
    if not here or not set(named).issuperset(wanted.parts):
        return None
    if wanted.parts:
        return wanted.parts
    return named if all(here) else ()


def places_kept(places: Sequence[PlaceRecord], wanted: PlaceRecord) -> Places:
    """Give the places that stay when an object, or the parts that are named, is taken."""
    kept = []
    for place in places:
        if place.object_number != wanted.object_number:
            kept.append(place)
        elif wanted.parts:
            rest = tuple(part for part in place.parts if part not in wanted.parts)
            kept += [] if place.parts and not rest else [replace(place, parts=rest)]
    return tuple(kept)


def places_changed(places: Sequence[PlaceRecord], place: PlaceRecord) -> Places | None:
    """Give the places with one object, or the same parts of it, at another place.

    Gives None where it does not lie there in just these parts.
    """
    name = (place.object_number, frozenset(place.parts))
    alike = [(one.object_number, frozenset(one.parts)) == name for one in places]
    if not any(alike):
        return None
    return tuple(place if is_it else one for one, is_it in zip(places, alike, strict=True))


def name_place(place: PlaceRecord) -> str:
    """Name an object, and its parts where some are meant, as a person would: 1987.412.3 a b."""
    return " ".join((place.object_number, *place.parts))
