"""Takes up again what was put down on the packing table: its place, and the photo it came with.

A record that was made on the spot stays: somebody has given this number, and history tells so.
"""

from __future__ import annotations

from dataclasses import dataclass

from service.errors import NotFoundError
from service.keeping.repack import Seen, place_anew, take_out
from service.records.record import PlaceRecord
from service.sentence import Sentence
from service.store.handles import Connection
from service.store.history import Stamp, begin_change
from service.store.packing.load import find_held, load_packing
from service.store.packing.move import Move, move_object
from service.store.packing.weighed import restore_weight
from service.store.shelf.take_back import take_photo_back

REASON = "Taken back at the packing table"


@dataclass(frozen=True, slots=True)
class TakenUp:
    """What is to be taken back: the object, and the states before it was put down.

    `before` and `after` are revisions of the container; where they are one, only a photo came.
    """

    container_number: str
    object_number: str
    before: int
    after: int
    photo_sha256: str = ""
    moved_from: str = ""
    moved_before: int = 0


def take_up(connection: Connection, wanted: TakenUp, *, stamp: Stamp) -> None:
    """Put an object back to where it lay before, or nowhere; its photo goes with it.

    What was packed since stays as it is. Where nothing was, the weight that was measured before
    holds again.

    Raises:
        NotFoundError: When it does not lie in the container any more.
        PackedElsewhereError: When somebody has put it elsewhere meanwhile.
    """
    begin_change(connection, stamp)
    if wanted.photo_sha256:
        take_photo_back(connection, wanted.object_number, wanted.photo_sha256, stamp=stamp)
    if wanted.before == wanted.after:
        return
    number = wanted.container_number
    seen = Seen(number, find_held(connection, number).revision, REASON)
    was = _find(connection, number, wanted.before, wanted.object_number)
    if was is not None:
        place_anew(connection, seen, was, stamp=stamp)
    elif wanted.moved_from:
        _move_back(connection, wanted, seen.revision, stamp)
    else:
        come = _find(connection, number, wanted.after, wanted.object_number)
        parts = come.parts if come else ()
        take_out(connection, seen, wanted.object_number, parts=parts, stamp=stamp)
    if seen.revision == wanted.after:
        restore_weight(connection, number, revision=wanted.after, stamp=stamp)


def _move_back(connection: Connection, wanted: TakenUp, revision: int, stamp: Stamp) -> None:
    """Move an object back to where it lay.

    Raises:
        NotFoundError: When it did not lie there.
    """
    source = wanted.moved_from
    place = _find(connection, source, wanted.moved_before, wanted.object_number)
    if place is None:
        raise NotFoundError(
            wanted.object_number, what=Sentence("object in {source}", source=source)
        )
    now = find_held(connection, source).revision
    move = Move(place, wanted.container_number, revision, source, now, REASON)
    move_object(connection, move, stamp=stamp)


def _find(
    connection: Connection, container_number: str, revision: int, object_number: str
) -> PlaceRecord | None:
    places = load_packing(connection, container_number, revision=revision).places
    return next((one for one in places if one.object_number == object_number), None)
