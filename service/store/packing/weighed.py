"""Takes out measured weights that a repack has made untrue.

A gross weight was read off a scale with what lay in the container then. With other contents the
container has not been weighed, and its cards must not say that it has.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from sqlalchemy import Connection, select, update

from service.records.record import ContainerRecord, PackingRecord
from service.store.base.bulk import in_portions
from service.store.canonical import compare_json, decode_record, dump_json, encode_record
from service.store.history import Entry
from service.store.packing.nesting import with_outer
from service.store.tables import containers


def forget_weights(
    connection: Connection, before: Mapping[str, PackingRecord], saved: Iterable[PackingRecord]
) -> list[Entry]:
    """Take out the gross weight of containers that hold other things now, and of those around.

    Returns what the history keeps of it, with the weight that was.
    """
    repacked = [
        packing.container_number
        for packing in saved
        if _contents(packing) != _contents(before[packing.container_number])
    ]
    return [
        entry
        for some in in_portions(sorted(with_outer(connection, repacked)))
        for entry in _forget(connection, some)
    ]


def _contents(packing: PackingRecord) -> Counter[tuple[str, tuple[str, ...]]]:
    return Counter((place.object_number, place.parts) for place in packing.places)


def _forget(connection: Connection, numbers: Sequence[str]) -> list[Entry]:
    query = select(containers.c.id, containers.c.record).where(
        containers.c.container_number.in_(numbers)
    )
    entries = []
    for key, text in connection.execute(query).all():
        record = decode_record(ContainerRecord, text)
        if record.gross is not None:
            bare = encode_record(replace(record, gross=None))
            connection.execute(update(containers).where(containers.c.id == key).values(record=bare))
            detail = dump_json({"record": compare_json(text, bare)})
            number = record.container_number
            entries.append(Entry("weight taken out", container_number=number, detail=detail))
    return entries
