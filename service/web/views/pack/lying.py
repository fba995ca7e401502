"""What lies in the container on the table, the last things first, with what they lack."""

from __future__ import annotations

from collections import Counter as Tally
from collections.abc import Sequence
from dataclasses import dataclass

from service.findings import Finding, Where, make_finding
from service.handling.hazards import name_hazard
from service.languages.saying import said, say_many
from service.records.record import ContainerRecord, ObjectRecord, PhotoRole, PlaceRecord
from service.sentence import Sentence
from service.store.handles import Connection
from service.store.load_records import load_container, load_objects
from service.store.packing.load import load_packing
from service.store.shelf.photos import StoredPhoto, find_photo_files
from service.web.views.shell.pictures import SMALL_PX, page_of_picture

_SHOWN = 24


@dataclass(frozen=True, slots=True)
class LyingLine:
    """A thing in the container; `picture` is the address of its front, if there is one."""

    place: PlaceRecord
    title: str
    picture: str
    photos: str
    hazards: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Lying:
    """A container as it is now.

    Attributes:
        lines: The last things put in, newest first.
        things: How many there are, in words.
        more: How many are not shown.
        layers: How many lie in each layer, from the top.
        lacking: What the records of its objects lack.
    """

    container: ContainerRecord
    revision: int
    lines: tuple[LyingLine, ...]
    things: str
    more: int
    layers: tuple[tuple[int, int], ...]
    lacking: tuple[Finding, ...]


def load_lying(connection: Connection, container_number: str) -> Lying:
    """Load what lies in a container.

    Raises:
        NotFoundError: When there is no such container.
    """
    container = load_container(connection, container_number)
    packing = load_packing(connection, container_number)
    numbers = list(dict.fromkeys(place.object_number for place in packing.places))
    records = {one.object_number: one for one in load_objects(connection, numbers)}
    photos = find_photo_files(connection, numbers)
    places = packing.places[::-1][:_SHOWN]
    layers = Tally(place.layer for place in packing.places)
    return Lying(
        container,
        packing.revision,
        tuple(_line(place, records, photos.get(place.object_number, ())) for place in places),
        say_many("{num} object", "{num} objects", len(numbers)),
        max(0, len(packing.places) - _SHOWN),
        tuple(sorted(layers.items())),
        tuple(
            finding
            for number in numbers
            for finding in list_lacking(records.get(number), photos.get(number, ()), number)
        ),
    )


def list_lacking(
    record: ObjectRecord | None, photos: Sequence[StoredPhoto], number: str
) -> tuple[Finding, ...]:
    """Tell what is to be recorded of an object before its cards are of use."""
    where = Where(object_number=number)
    found = []
    if record is None or not record.title:
        message = Sentence("{number} is untitled, to be recorded.", number=number)
        found.append(make_finding("no-title", where, message))
    if not photos and not (record and record.restricted):
        message = Sentence("{number} has no photo yet.", number=number)
        found.append(make_finding("no-photo", where, message))
    return tuple(found)


def _line(
    place: PlaceRecord, records: dict[str, ObjectRecord], photos: Sequence[StoredPhoto]
) -> LyingLine:
    record = records.get(place.object_number)
    front = next((one for one in photos if one.role is PhotoRole.FRONT), None)
    shown = front or next(iter(photos), None)
    return LyingLine(
        place,
        record.title if record else "",
        page_of_picture(shown.sha256, place.object_number, SMALL_PX) if shown else "",
        say_many("{num} photo", "{num} photos", len(photos)) if photos else "",
        tuple(said(name_hazard(one)) for one in record.hazards) if record else (),
    )
