"""Loads what the papers of the round are worded from, with the stored file behind each photo."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from service.contents.arrange import arrange_packings
from service.contents.packing import PackedObject, Packing
from service.errors import NotFoundError
from service.keeping.desk import Desk
from service.keeping.photos.shown import find_source
from service.keeping.today import load_printable, word_hazards
from service.records.record import Collection, Museum, ObjectRecord, PlaceRecord
from service.render.pictures.prepare import PhotoSource
from service.store.handles import Connection
from service.store.load_records import load_museum, load_objects
from service.store.shelf.photos import StoredPhoto


@dataclass(frozen=True, slots=True)
class Loaded:
    """Packings by container, the museum's choices, and the photos that records name."""

    packings: Mapping[str, Packing]
    museum: Museum
    photos: Mapping[str, StoredPhoto]


def load_packings(connection: Connection, container_numbers: Sequence[str]) -> Loaded:
    """Load containers with all that lies in them, and the hazards that are presumed of it."""
    printable = load_printable(connection, container_numbers)
    collection = word_hazards(printable.collection)
    packings = arrange_packings(collection).packings
    by_number = {packing.container.container_number: packing for packing in packings}
    return Loaded(by_number, collection.museum, printable.photos)


def find_packed(packing: Packing, place: PlaceRecord) -> PackedObject | None:
    """Find an object where it lies, None where it lies there no more."""
    here = [one for one in packing.contents if one.record.object_number == place.object_number]
    wanted = set(place.parts)
    holding = (one for one in here if wanted & set(one.place.parts))
    return next(holding, here[0] if here else None)


def load_unpacked(connection: Connection, place: PlaceRecord) -> PackedObject:
    """Give an object that lies nowhere, without photos; its hazards and restrictions count."""
    found = tuple(load_objects(connection, [place.object_number]))
    for record in word_hazards(Collection(load_museum(connection), found)).objects:
        return PackedObject(replace(record, photos=()), place)
    return PackedObject(ObjectRecord(place.object_number), place, known=False)


def load_container_of(loaded: Loaded, container_number: str) -> Packing:
    """Give a container that was loaded.

    Raises:
        NotFoundError: When there is none of that number.
    """
    if container_number not in loaded.packings:
        raise NotFoundError(container_number, what="container")
    return loaded.packings[container_number]


def find_files(
    desk: Desk, photos: Mapping[str, StoredPhoto], wanted: Iterable[str]
) -> dict[str, PhotoSource]:
    """Give the files behind those photos that a paper shows, by the name that it gives them."""
    return {
        name: find_source(desk.shelf, photos[name])
        for name in dict.fromkeys(wanted)
        if name in photos
    }
