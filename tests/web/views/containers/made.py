"""A container as one looks at it, made by hand."""

from __future__ import annotations

from collections.abc import Iterable

from service.contents.arrange import arrange_packings
from service.keeping.containers.look import ContainerLook
from service.records.record import (
    Collection,
    ContainerRecord,
    Museum,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
    Questions,
)
from service.store.kept.outs import Out
from service.store.shelf.photos import StoredPhoto

BOX = ContainerRecord("B-1", title="Small finds")
MUSEUM = Museum(questions=Questions("Collections desk", "555 0142"))


def look(
    objects: Iterable[ObjectRecord],
    places: Iterable[PlaceRecord],
    *,
    photos: Iterable[StoredPhoto] = (),
    outs: Iterable[Out] = (),
) -> ContainerLook:
    """Look at a box with these objects at these places."""
    packed = PackingRecord("B-1", 1, tuple(places))
    collection = Collection(MUSEUM, tuple(objects), (BOX,), (packed,))
    (packing,) = arrange_packings(collection).packings
    named = {photo.stored_name: photo for photo in photos}
    return ContainerLook(BOX, packed, packing, MUSEUM, named, tuple(outs), ())
