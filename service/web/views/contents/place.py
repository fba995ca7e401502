"""Where in its container an object lies: layer, compartment, parts and note, as they are typed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from fastapi import APIRouter, Response

from service.contents.places import name_place
from service.keeping.repack import lay_out
from service.languages.saying import say
from service.records.read_packings import read_packings
from service.records.record import PlaceRecord
from service.records.sources.columns import PACKING_COLUMNS
from service.store.handles import Connection
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs
from service.web.views.contents.seen import TheDesire, make_change, undo_packing
from service.web.views.shell.notice import Notice
from service.web.views.shell.typed import make_typed_row, tell_faults

router = APIRouter(route_class=GatedRoute)

_FIELDS = ("parts", "layer", "compartment", "note")
"""What a form says of a place beside the object."""


@dataclass(frozen=True, slots=True)
class TypedPlace:
    """A place as it was typed, and what of it could not be understood, by field."""

    place: PlaceRecord
    faults: Mapping[str, str]


def read_place(object_number: str, fields: Mapping[str, str]) -> TypedPlace:
    """Read layer, compartment, parts and note as a spreadsheet of packings is read."""
    typed = {name: fields.get(name, "") for name in _FIELDS}
    # Whose place it is has been found out before; here it only has to be there.
    row, notebook = make_typed_row(
        {**typed, "container_number": "-", "object_number": "x"}, PACKING_COLUMNS
    )
    (packing,) = read_packings([row])
    place = replace(packing.places[0], object_number=object_number)
    faults = tell_faults(notebook)
    # A compartment of another form than B3 is kept as it is written.
    faults.pop("compartment", None)
    return TypedPlace(place, faults)


@router.post("/contents/place", include_in_schema=False, dependencies=[needs(Role.PACK)])
def place_object(desire: TheDesire) -> Response:
    """Say anew where an object lies, and which parts of it."""

    def change(connection: Connection) -> Notice:
        was = desire.find(connection)
        wanted = replace(typed.place, object_number=was.object_number)
        packed = lay_out(
            connection,
            desire.seen,
            lambda places: tuple(wanted if place == was else place for place in places),
            stamp=desire.acting.stamp,
        )
        if packed.revision == desire.seen.revision:
            return Notice(say("{wanted} lies there already.", wanted=name_place(wanted)))
        words = say("{wanted} has its new place.", wanted=name_place(wanted))
        return Notice(words, undo_packing(desire.seen, packed.revision))

    typed = read_place("x", desire.fields)
    if typed.faults:
        name, words = next(iter(typed.faults.items()))
        return desire.refuse_field(name, words)
    return make_change(desire, change)
