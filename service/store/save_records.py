"""Saves a collection so that saving it again changes nothing, and says what came of each record."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

from sqlalchemy import Connection, Table, bindparam, insert, select, update

from service.findings import Finding
from service.records.record import Collection, ContainerRecord, Museum, ObjectRecord
from service.store.bulk import execute_rows, in_portions
from service.store.canonical import (
    check_text,
    compare_json,
    dump_json,
    encode_record,
    encode_source,
)
from service.store.history import Entry, Stamp, begin_change, write_history
from service.store.packing.take_in import Outcome, take_in_packings
from service.store.photos import save_photos
from service.store.tables import containers, museum, objects

Record = TypeVar("Record", ObjectRecord, ContainerRecord)


@dataclass(frozen=True, slots=True)
class Saved:
    """What came of a collection: numbers by what was done with them, and what was refused."""

    objects: Outcome
    containers: Outcome
    packings: Outcome
    museum_changed: bool
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class _Kind(Generic[Record]):
    """One kind of record: its table, how it is named there, and its searched columns."""

    table: Table
    number: str
    columns: Callable[[Record], dict[str, str]]


@dataclass(frozen=True, slots=True)
class _Stored:
    """A row as it is: its key, the record and the source row."""

    key: int
    record: str
    source: str


_OBJECTS: _Kind[ObjectRecord] = _Kind(
    objects,
    "object_number",
    lambda record: {"object_number": record.object_number, "title": record.title},
)
_CONTAINERS: _Kind[ContainerRecord] = _Kind(
    containers,
    "container_number",
    lambda record: {
        "container_number": record.container_number,
        "title": record.title,
        "location": " / ".join(record.location),
        "inside": record.inside,
    },
)


def save_records(connection: Connection, collection: Collection, *, stamp: Stamp) -> Saved:
    """Save museum, objects, containers and packings; whatever it does not name stays as it is.

    A museum that says nothing changes nothing. Of several records of one number the first counts,
    of several packings of one container that of the highest revision; it becomes the store's next
    revision where it differs from the current one.

    Raises:
        UnstorableTextError: When a text cannot be stored; nothing is saved.
    """
    change = begin_change(connection, stamp)
    entries: list[Entry] = []
    museum_changed = _save_museum(connection, collection.museum, entries)
    objects_saved = _save_kind(connection, _OBJECTS, collection.objects, entries)
    save_photos(connection, collection.objects, only=objects_saved.touched)
    containers_saved = _save_kind(connection, _CONTAINERS, collection.containers, entries)
    taken = take_in_packings(connection, change, collection.packings)
    write_history(connection, change, [*entries, *taken.entries])
    return Saved(objects_saved, containers_saved, taken.outcome, museum_changed, taken.findings)


def _save_museum(connection: Connection, said: Museum, entries: list[Entry]) -> bool:
    text = encode_record(said)
    stored = connection.execute(select(museum.c.record)).scalar()
    if said == Museum() or stored == text:
        return False
    if stored is None:
        connection.execute(insert(museum).values(id=1, record=text))
    else:
        connection.execute(update(museum).values(record=text))
    entries.append(Entry("museum changed", detail=dump_json(compare_json(stored or "{}", text))))
    return True


def _save_kind(
    connection: Connection, kind: _Kind[Record], records: Iterable[Record], entries: list[Entry]
) -> Outcome:
    rows = _rows_of(kind, records)
    stored = _load_stored(connection, kind, list(rows))
    new: list[str] = [number for number in rows if number not in stored]
    changed: list[str] = [
        number
        for number, was in stored.items()
        if (was.record, was.source) != (rows[number]["record"], rows[number]["source"])
    ]
    execute_rows(connection, insert(kind.table), [rows[number] for number in new])
    _update(connection, kind, [{**rows[number], "key": stored[number].key} for number in changed])
    entries += [_tell(kind, "recorded", number) for number in new]
    entries += [
        _tell(kind, "changed", number, detail=_difference(stored[number], rows[number]))
        for number in changed
    ]
    differing = {*new, *changed}
    unchanged = [number for number in rows if number not in differing]
    return Outcome(tuple(new), tuple(changed), tuple(unchanged))


def _rows_of(kind: _Kind[Record], records: Iterable[Record]) -> dict[str, dict[str, str]]:
    """Give the rows by number; of several records of one number the first counts."""
    rows: dict[str, dict[str, str]] = {}
    for record in records:
        columns = {name: check_text(text) for name, text in kind.columns(record).items()}
        texts = {"record": encode_record(record), "source": encode_source(record.source)}
        rows.setdefault(columns[kind.number], columns | texts)
    return rows


def _load_stored(
    connection: Connection, kind: _Kind[Record], numbers: Sequence[str]
) -> dict[str, _Stored]:
    found: dict[str, _Stored] = {}
    columns = kind.table.c
    for some in in_portions(numbers):
        query = select(columns[kind.number], columns.id, columns.record, columns.source).where(
            columns[kind.number].in_(some)
        )
        for number, key, record, source in connection.execute(query):
            found[number] = _Stored(key, record, source)
    return found


def _update(
    connection: Connection, kind: _Kind[Record], rows: Sequence[Mapping[str, object]]
) -> None:
    if rows:
        names = [name for name in rows[0] if name != "key"]
        statement = update(kind.table).where(kind.table.c.id == bindparam("key"))
        execute_rows(connection, statement.values({n: bindparam(n) for n in names}), rows)


def _tell(kind: _Kind[Record], verb: str, number: str, *, detail: str = "") -> Entry:
    if kind.number == "object_number":
        return Entry(verb, object_number=number, detail=detail)
    return Entry(verb, container_number=number, detail=detail)


def _difference(stored: _Stored, row: Mapping[str, str]) -> str:
    """Keep the fields and source cells that differ, as they were and as they are."""
    pairs = {
        "record": (stored.record, row["record"]),
        "source": (stored.source, row["source"]),
    }
    return dump_json({name: compare_json(before, after) for name, (before, after) in pairs.items()})
