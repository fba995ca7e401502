"""Puts one thing down on the packing table: record, photo and place in one transaction.

Whoever packs alongside stands in nobody's way: what is put down is added to the state of the
container as it is then, whichever that is.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from service.errors import NotFoundError, PackedElsewhereError
from service.keeping.repack import Seen, place_anew, put_in
from service.records.record import (
    Collection,
    Hazard,
    HazardState,
    ObjectRecord,
    PackingRecord,
    PhotoRole,
    PlaceRecord,
)
from service.store.handles import Connection
from service.store.history import Stamp, begin_change
from service.store.load_records import load_object
from service.store.packing.load import load_holders, load_packing
from service.store.packing.move import Move, move_object
from service.store.save_records import save_records
from service.store.shelf.files import StoredFile
from service.store.shelf.photos import BroughtPhoto, bring_photos

REASON = "Packing table"
_SURER = (HazardState.UNCHECKED, HazardState.PRESUMED, HazardState.CONFIRMED)


@dataclass(frozen=True, slots=True)
class TablePhoto:
    """A photo whose file lies on the shelf, and which side it shows."""

    stored: StoredFile
    role: PhotoRole = PhotoRole.FRONT

    @property
    def file(self) -> str:
        """Give the name it goes by: what the camera called it says nothing."""
        return f"{self.role.value}-{self.stored.sha256[:16]}{self.stored.suffix}"


@dataclass(frozen=True, slots=True)
class TableItem:
    """One thing to put down.

    Attributes:
        place: The object and where it lies; an empty compartment leaves the one it has.
        title: Taken where the record has none.
        hazard: Added to the record, or made surer there; None where nothing is known.
        is_moved: Whether it is taken out of the container in which it lies.
    """

    container_number: str
    place: PlaceRecord
    title: str = ""
    hazard: Hazard | None = None
    is_moved: bool = False


@dataclass(frozen=True, slots=True)
class PutDown:
    """What came of it, and what is needed to take it up again.

    Attributes:
        packing: The container as it is now.
        before: Its revision before; the same as now where only a photo came.
        is_new: Whether the record was made on the spot.
        photo_sha256: The photo, where it was not known before.
        moved_from: The container it was taken out of, and the revision of that before.
    """

    packing: PackingRecord
    before: int
    is_new: bool
    photo_sha256: str = ""
    moved_from: str = ""
    moved_before: int = 0


def put_down(
    connection: Connection, item: TableItem, photo: TablePhoto | None, *, stamp: Stamp
) -> PutDown:
    """Make the record if it is new, give it the photo, and put it in.

    An object that lies in the container already gets another photo, or another layer.

    Raises:
        NotFoundError: When there is no such container.
        PackedElsewhereError: When it lies in another container and is not to be moved.
        UnstorableTextError: When a text cannot be stored.
    """
    # From here on nobody else changes anything, so what is read now still holds at the end.
    begin_change(connection, stamp)
    was = load_packing(connection, item.container_number)
    is_new = _keep_record(connection, item, stamp)
    sha256 = _bring(connection, item, photo, stamp)
    done = PutDown(was, was.revision, is_new, sha256)
    here = list(_sharing(was, item.place))
    if not here:
        return _place(connection, item, done, stamp)
    wanted = replace(
        here[0],
        layer=item.place.layer,
        compartment=item.place.compartment or here[0].compartment,
        note=item.place.note or here[0].note,
    )
    if len(here) > 1 or wanted == here[0]:
        return done
    seen = Seen(item.container_number, was.revision, REASON)
    return replace(done, packing=place_anew(connection, seen, wanted, stamp=stamp))


def _keep_record(connection: Connection, item: TableItem, stamp: Stamp) -> bool:
    """Make the record, or add to it what it lacks; tell whether it is new."""
    number = item.place.object_number
    try:
        was, is_new = load_object(connection, number), False
    except NotFoundError:
        was, is_new = ObjectRecord(number), True
    wanted = replace(
        was, title=was.title or item.title, hazards=_with_hazard(was.hazards, item.hazard)
    )
    if is_new or wanted != was:
        save_records(connection, Collection(objects=(wanted,)), stamp=stamp)
    return is_new


def _with_hazard(hazards: tuple[Hazard, ...], found: Hazard | None) -> tuple[Hazard, ...]:
    """Add a hazard; one that is recorded stays, and is only ever made surer at the table."""
    if found is None:
        return hazards
    known = next((one for one in hazards if one.code == found.code), None)
    if known is None:
        return (*hazards, found)
    if _SURER.index(found.state) <= _SURER.index(known.state):
        return hazards
    notes = "; ".join(dict.fromkeys(note for note in (known.note, found.note) if note))
    surer = replace(
        known,
        state=found.state,
        note=notes,
        checked_on=found.checked_on,
        checked_by=found.checked_by,
    )
    return tuple(surer if one is known else one for one in hazards)


def _bring(connection: Connection, item: TableItem, photo: TablePhoto | None, stamp: Stamp) -> str:
    """Give the object its photo; empty where there is none, or it was known."""
    if photo is None:
        return ""
    number = item.place.object_number
    brought = BroughtPhoto(number, photo.file, photo.role, photo.stored)
    is_new = bring_photos(connection, [brought], stamp=stamp)
    return photo.stored.sha256 if is_new else ""


def _place(connection: Connection, item: TableItem, done: PutDown, stamp: Stamp) -> PutDown:
    """Put the object in; one that lies elsewhere is taken out of there if that is wanted.

    Raises:
        PackedElsewhereError: When it lies in another container and is not to be moved.
    """
    number, place = item.container_number, item.place
    holders = load_holders(connection, [place.object_number])
    lying = [name for name in holders if list(_sharing(load_packing(connection, name), place))]
    if not lying:
        seen = Seen(number, done.before, REASON)
        return replace(done, packing=put_in(connection, seen, place, stamp=stamp))
    # What lies apart in several containers is not gathered by one word.
    if not item.is_moved or len(lying) > 1:
        raise PackedElsewhereError(place.object_number, container_number=number, lies_in=lying[0])
    before = load_packing(connection, lying[0]).revision
    move = Move(place, lying[0], before, number, done.before, REASON)
    _, packing = move_object(connection, move, stamp=stamp)
    return replace(done, packing=packing, moved_from=lying[0], moved_before=before)


def _sharing(packing: PackingRecord, wanted: PlaceRecord) -> Iterator[PlaceRecord]:
    """Give the places in which the object, or a part that is meant, lies."""
    for place in packing.places:
        is_it = place.object_number == wanted.object_number
        parts = set(place.parts)
        if is_it and (not parts or not wanted.parts or parts & set(wanted.parts)):
            yield place
