"""Takes out measured weights that a repack has made untrue, and puts them back when it is undone.

A gross weight was read off a scale with what lay in the container then. With other contents the
container has not been weighed, and its cards must not say that it has.
"""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from sqlalchemy import Connection, select, update

from service.records.record import ContainerRecord, PackingRecord, Weight
from service.store.base.bulk import in_portions
from service.store.canonical import compare_json, decode_record, dump_json, encode_record
from service.store.history import Entry, Stamp, begin_change, load_history, write_history
from service.store.packing.nesting import with_outer
from service.store.tables import containers

_TAKEN_OUT = "weight taken out"


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


def restore_weight(
    connection: Connection, container_number: str, *, revision: int, stamp: Stamp
) -> bool:
    """Put back the gross weight that a revision took out, and tell whether there was one.

    For whoever undoes just that revision: the container holds what it held when it was weighed. One
    that was weighed since keeps its new weight.
    """
    text, key = connection.execute(
        select(containers.c.record, containers.c.id).where(
            containers.c.container_number == container_number
        )
    ).one()
    record = decode_record(ContainerRecord, text)
    weight = _weight_taken(connection, container_number, revision)
    if record.gross is not None or weight is None:
        return False
    change = begin_change(connection, stamp)
    weighed = encode_record(replace(record, gross=weight))
    connection.execute(update(containers).where(containers.c.id == key).values(record=weighed))
    detail = dump_json({"record": compare_json(text, weighed)})
    entry = Entry("weight put back", container_number=container_number, detail=detail)
    write_history(connection, change, [entry])
    return True


def _weight_taken(connection: Connection, container_number: str, revision: int) -> Weight | None:
    """Find the weight that was taken out by the change that made a revision."""
    events = load_history(connection, container_number=container_number)
    changes = {event.change for event in events if event.entry.revision == revision}
    for event in events:
        if event.entry.verb == _TAKEN_OUT and event.change in changes:
            before = json.loads(event.entry.detail)["record"]["before"]
            return decode_record(Weight, dump_json(before["gross"]))
    return None


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
            entries.append(Entry(_TAKEN_OUT, container_number=number, detail=detail))
    return entries
