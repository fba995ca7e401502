"""Adding and changing one record, the same for objects and containers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from typing import TypeVar

from service.errors import NotFoundError
from service.records.read_objects import ADDRESS
from service.records.record import Collection, ContainerRecord, ObjectRecord
from service.records.rows.row import CELL_LIMIT
from service.records.rows.text import tidy_text
from service.sentence import Sentence
from service.store.handles import Connection
from service.store.history import Stamp
from service.store.load_records import load_container, load_object
from service.store.save_records import save_records
from service.web.replies.refusals import Refusal, RefusedError
from service.web.store.matching import refuse_stale

_LONGEST_NUMBER = 200

Record = TypeVar("Record", ObjectRecord, ContainerRecord)


def add_record(connection: Connection, record: Record, *, stamp: Stamp) -> Record:
    """Add a record whose number is new.

    Raises:
        RefusedError: When the number is taken, or is none, or the record cannot be printed.
    """
    number = number_of(record)
    refuse_odd(number)
    try:
        load_record(connection, record)
    except NotFoundError:
        return _save(connection, record, stamp)
    raise RefusedError(
        Refusal.ALREADY_THERE, Sentence("There is a record {number!r} already.", number=number)
    )


def change_record(
    connection: Connection, record: Record, number: str, *, if_match: str, stamp: Stamp
) -> Record:
    """Put a record in the place of the current one; the source row stays unless one is sent.

    Raises:
        NotFoundError: When there is none of that number.
        RefusedError: When the record has another number or cannot be printed, or was changed
            meanwhile.
    """
    if number_of(record) != number:
        detail = Sentence(
            "record: the path names {number!r}; a number cannot be changed", number=number
        )
        raise RefusedError(Refusal.UNUSABLE_FIELD, detail)
    current = load_record(connection, record)
    refuse_stale(if_match, yours=record, current=current)
    return _save(connection, replace(record, source=record.source or current.source), stamp)


def number_of(record: ObjectRecord | ContainerRecord) -> str:
    """Give the number of a record."""
    return record.object_number if isinstance(record, ObjectRecord) else record.container_number


def load_record(connection: Connection, record: Record) -> Record:
    """Load the record that has the number of this one.

    Raises:
        NotFoundError: When there is none.
    """
    if isinstance(record, ObjectRecord):
        return load_object(connection, record.object_number)
    return load_container(connection, record.container_number)


def _save(connection: Connection, record: Record, stamp: Stamp) -> Record:
    _refuse_unprintable(record)
    if isinstance(record, ObjectRecord):
        collection = Collection(objects=(record,))
    else:
        collection = Collection(containers=(record,))
    save_records(connection, collection, stamp=stamp)
    return load_record(connection, record)


def _refuse_unprintable(record: ObjectRecord | ContainerRecord) -> None:
    """Refuse what no table could hold, so that nothing relies on it.

    Raises:
        RefusedError: When a text is longer than a cell, a hazard has no name, or what a symbol
            would say is no address.
    """
    longest = max(map(len, _texts_in(record)), default=0)
    if longest > CELL_LIMIT:
        detail = Sentence(
            "record: a text has {longest} characters; at most {cell_limit} are kept",
            longest=longest,
            cell_limit=CELL_LIMIT,
        )
        raise RefusedError(Refusal.UNUSABLE_FIELD, detail)
    if isinstance(record, ContainerRecord):
        return
    if any(not tidy_text(one.code) for one in record.hazards):
        raise RefusedError(Refusal.UNUSABLE_FIELD, "record: a hazard has no code")
    if record.catalogue_url and not ADDRESS.fullmatch(record.catalogue_url):
        raise RefusedError(Refusal.UNUSABLE_FIELD, "record: catalogue_url is no https address")


def _texts_in(value: object) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, tuple):
        for part in value:
            yield from _texts_in(part)
    elif is_dataclass(value):
        for field in fields(value):
            yield from _texts_in(getattr(value, field.name))


def refuse_odd(number: str) -> None:
    """Refuse what could be neither printed nor typed.

    Raises:
        RefusedError: When the number is empty, too long, or holds what cannot be seen.
    """
    if (
        number != number.strip()
        or not number.isprintable()
        or not 0 < len(number) <= _LONGEST_NUMBER
    ):
        detail = Sentence("record: {number!a} is no number", number=number[:80])
        raise RefusedError(Refusal.UNUSABLE_FIELD, detail)
