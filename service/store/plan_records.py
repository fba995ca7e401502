"""What saving a collection would do: the plan that a preview shows and a save follows."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

from sqlalchemy import Connection, Table, select

from service.findings import Finding
from service.records.naturally import natural_text
from service.records.record import Collection, ContainerRecord, Museum, ObjectRecord
from service.records.rows.said import Columns
from service.store.base.bulk import in_portions
from service.store.canonical import (
    check_text,
    compare_json,
    decode_record,
    encode_record,
    encode_source,
)
from service.store.packing.take_in import Outcome, PackingsPlan, plan_packings
from service.store.tables import containers, museum, objects
from service.store.unsaid import complete

Record = TypeVar("Record", ObjectRecord, ContainerRecord)

LAST = "\U0010ffff"
"""Sorts behind every text."""


@dataclass(frozen=True, slots=True)
class Kind(Generic[Record]):
    """One kind of record: its table, how it is named there, and its searched columns."""

    table: Table
    number: str
    columns: Callable[[Record], dict[str, str]]


@dataclass(frozen=True, slots=True)
class Stored:
    """A row as it is: its key, the record and the source row."""

    key: int
    record: str
    source: str


@dataclass(frozen=True, slots=True)
class KindPlan(Generic[Record]):
    """The rows of one kind as they are wanted, and as they are stored, by number.

    `records` are the wanted ones: what their source does not say is filled in from the store.
    """

    kind: Kind[Record]
    records: Mapping[str, Record]
    rows: Mapping[str, Mapping[str, str]]
    stored: Mapping[str, Stored]
    outcome: Outcome

    def difference(self, number: str) -> dict[str, dict[str, dict[str, object]]]:
        """Give the fields and source cells of a changed record, as they were and as they will be.

        Raises:
            KeyError: When there is no such record on both sides.
        """
        was, row = self.stored[number], self.rows[number]
        pairs = {"record": (was.record, row["record"]), "source": (was.source, row["source"])}
        return {name: compare_json(before, after) for name, (before, after) in pairs.items()}


@dataclass(frozen=True, slots=True)
class MuseumPlan:
    """The museum's own choices as they are stored, and as they will be; None where there are none.

    `wanted` is None where nothing changes.
    """

    stored: str | None
    wanted: str | None


@dataclass(frozen=True, slots=True)
class RecordsPlan:
    """All that saving a collection would do."""

    museum: MuseumPlan
    objects: KindPlan[ObjectRecord]
    containers: KindPlan[ContainerRecord]
    packings: PackingsPlan

    @property
    def findings(self) -> tuple[Finding, ...]:
        """Why some packings are refused."""
        return self.packings.findings


OBJECTS: Kind[ObjectRecord] = Kind(
    objects,
    "object_number",
    lambda record: {
        "object_number": record.object_number,
        "sort_key": natural_text(record.object_number),
        "title": record.title,
    },
)
CONTAINERS: Kind[ContainerRecord] = Kind(
    containers,
    "container_number",
    lambda record: {
        "container_number": record.container_number,
        "sort_key": natural_text(record.container_number),
        "title": record.title,
        "location": " / ".join(record.location),
        # A place that is not known comes last.
        "location_key": "".join(map(natural_text, record.location)) or LAST,
        "inside": record.inside,
    },
)


def plan_records(connection: Connection, collection: Collection) -> RecordsPlan:
    """Compare a collection with the store; whatever it does not name stays as it is.

    So do fields for which the source of a record has no column (`records/rows/said.py`). A museum
    that says nothing changes nothing. Of several records of one number the first counts, of several
    packings of one container that of the highest revision.

    Raises:
        UnstorableTextError: When a text cannot be stored.
    """
    said = collection.said_of_containers
    planned = _plan_kind(connection, CONTAINERS, collection.containers, said)
    return RecordsPlan(
        _plan_museum(connection, collection.museum),
        _plan_kind(connection, OBJECTS, collection.objects, collection.said_of_objects),
        planned,
        plan_packings(connection, collection.packings, new_containers=planned.outcome.new),
    )


def _plan_museum(connection: Connection, said: Museum) -> MuseumPlan:
    text = encode_record(said)
    stored = connection.execute(select(museum.c.record)).scalar()
    return MuseumPlan(stored, None if said == Museum() or stored == text else text)


def _plan_kind(
    connection: Connection,
    kind: Kind[Record],
    records: Iterable[Record],
    said: Mapping[str, Columns],
) -> KindPlan[Record]:
    wanted = _first_of_each(kind, records)
    rows = {number: _row_of(kind, record) for number, record in wanted.items()}
    stored = _load_stored(connection, kind, list(rows))
    for number, was in stored.items():
        if number in said and _is_changed(was, rows[number]):
            wanted[number] = _complete(wanted[number], was, said[number])
            rows[number] = _row_of(kind, wanted[number])
    changed = {number for number, was in stored.items() if _is_changed(was, rows[number])}
    outcome = Outcome(
        new=tuple(number for number in rows if number not in stored),
        changed=tuple(number for number in stored if number in changed),
        unchanged=tuple(number for number in rows if number in stored and number not in changed),
    )
    return KindPlan(kind, wanted, rows, stored, outcome)


def _first_of_each(kind: Kind[Record], records: Iterable[Record]) -> dict[str, Record]:
    """Give the records by number; of several of one number the first counts."""
    wanted: dict[str, Record] = {}
    for record in records:
        wanted.setdefault(getattr(record, kind.number), record)
    return wanted


def _row_of(kind: Kind[Record], record: Record) -> dict[str, str]:
    columns = {name: check_text(text) for name, text in kind.columns(record).items()}
    texts = {"record": encode_record(record), "source": encode_source(record.source)}
    return columns | texts


def _is_changed(was: Stored, row: Mapping[str, str]) -> bool:
    return (was.record, was.source) != (row["record"], row["source"])


def _complete(record: Record, was: Stored, said: Columns) -> Record:
    return complete(record, decode_record(type(record), was.record, source=was.source), said)


def _load_stored(
    connection: Connection, kind: Kind[Record], numbers: Sequence[str]
) -> dict[str, Stored]:
    found: dict[str, Stored] = {}
    columns = kind.table.c
    for some in in_portions(numbers):
        query = select(columns[kind.number], columns.id, columns.record, columns.source).where(
            columns[kind.number].in_(some)
        )
        for number, key, record, source in connection.execute(query):
            found[number] = Stored(key, record, source)
    return found
