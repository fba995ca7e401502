"""What lies in a container, layer by layer, as its page shows it."""

from __future__ import annotations

import hashlib
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from service.cards.compose.objects import choose_photo, name_object
from service.cards.compose.warn import is_restricted
from service.contents.packing import Layer, PackedObject
from service.handling.cautions import find_caution
from service.handling.hazards import find_hazard, name_hazard
from service.keeping.containers.look import ContainerLook
from service.records.record import PhotoRole, PlaceRecord
from service.store.kept.outs import Out
from service.web.views.shell.pictures import MIDDLE_PX, page_of_picture


@dataclass(frozen=True, slots=True)
class ShownObject:
    """An object, or named parts of it, at its place.

    Attributes:
        key: Names the place in forms and in ids.
        packed: The object and its place.
        name: Its title, or what stands for one.
        photo: The address of its photo, empty where there is none or where it is not shown.
        is_restricted: Whether it is shown to nobody outside.
        marks: Pairs of mark and words, hazards first.
        out: The slip where it is out of its place.
        has_neighbours: Whether others lie at the same spot, so that it has an order among them.
    """

    key: str
    packed: PackedObject
    name: str
    photo: str
    is_restricted: bool
    marks: tuple[tuple[str, str], ...]
    out: Out | None
    has_neighbours: bool

    @property
    def place(self) -> PlaceRecord:
        """Where it lies."""
        return self.packed.place

    @property
    def number(self) -> str:
        """The number of the object."""
        return self.packed.record.object_number


@dataclass(frozen=True, slots=True)
class ShownLayer:
    """A layer, counted from the top, and what lies in it."""

    number: int
    objects: tuple[ShownObject, ...]


def show_layers(look: ContainerLook) -> tuple[ShownLayer, ...]:
    """Show what lies directly in the container, the top layer first."""
    return tuple(_show_layer(layer, look) for layer in look.packing.layers)


def list_lost(look: ContainerLook) -> tuple[Out, ...]:
    """List the slips of what has no place in the container any more."""
    places = [packed.place for packed in look.packing.contents]
    return tuple(out for out in look.outs if not any(_is_out(place, out) for place in places))


def place_key(place: PlaceRecord) -> str:
    """Name a place in a form: the same object in the same parts has the same key everywhere."""
    text = "\n".join((place.object_number, *sorted(place.parts)))
    return hashlib.sha256(text.encode()).hexdigest()[:12]


def find_place(places: Iterable[PlaceRecord], key: str) -> PlaceRecord | None:
    """Find the place that has a key."""
    return next((place for place in places if place_key(place) == key), None)


def _show_layer(layer: Layer, look: ContainerLook) -> ShownLayer:
    spots = Counter(packed.place.compartment for packed in layer.contents)
    shown = (
        _show(packed, look, has_neighbours=spots[packed.place.compartment] > 1)
        for packed in layer.contents
    )
    return ShownLayer(layer.number, tuple(shown))


def _show(packed: PackedObject, look: ContainerLook, *, has_neighbours: bool) -> ShownObject:
    hidden = is_restricted(packed)
    photo = None if hidden else look.photos.get(choose_photo(packed, PhotoRole.FRONT))
    return ShownObject(
        key=place_key(packed.place),
        packed=packed,
        name=name_object(packed),
        photo=page_of_picture(photo.sha256, packed.record.object_number, MIDDLE_PX)
        if photo
        else "",
        is_restricted=hidden,
        marks=_mark(packed),
        out=next((out for out in look.outs if _is_out(packed.place, out)), None),
        has_neighbours=has_neighbours,
    )


def _mark(packed: PackedObject) -> tuple[tuple[str, str], ...]:
    """Give the marks of an object in full words, as they may stand inside the house."""
    record = packed.record
    found = [(find_hazard(one.code).mark, name_hazard(one)) for one in record.hazards]
    found += [(find_caution(code).mark, find_caution(code).name) for code in record.cautions]
    return tuple(dict.fromkeys(found))


def _is_out(place: PlaceRecord, out: Out) -> bool:
    slip = out.slip
    is_same = slip.object_number == place.object_number
    return is_same and (not slip.parts or not place.parts or {*slip.parts} <= {*place.parts})
