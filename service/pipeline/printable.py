"""Readies records for print: signs no font holds are replaced, photos that failed are let go."""

from __future__ import annotations

from collections.abc import Collection as Names
from collections.abc import Hashable, Iterator, Mapping
from dataclasses import fields, is_dataclass, replace
from enum import Enum
from functools import cache
from typing import TypeVar, cast

from service.findings import Finding, Where, make_finding
from service.pages.ruler import Ruler
from service.records.record import (
    Collection,
    ContainerRecord,
    Museum,
    ObjectRecord,
    PackingRecord,
)
from service.sentence import Sentence

Record = TypeVar("Record", ObjectRecord, ContainerRecord, PackingRecord, Museum)

_KEPT = frozenset(
    (
        "object_number",
        "container_number",
        "inside",
        "object_address",
        "container_address",
        "catalogue_url",
        "photos",
        "source",
    )
)
"""Fields that stay as they are: they name something, or are not printed."""
_NOWHERE = Where()


def replace_missing(collection: Collection, ruler: Ruler) -> tuple[Collection, tuple[Finding, ...]]:
    """Write each character no shipped font holds as its code, and report it; never an empty box."""
    findings: list[Finding] = []

    def clean(record: Record, where: Where = _NOWHERE) -> Record:
        return _clean(record, where, ruler, findings)

    printable = replace(
        collection,
        museum=clean(collection.museum),
        objects=tuple(
            clean(record, Where(object_number=record.object_number))
            for record in collection.objects
        ),
        containers=tuple(
            clean(record, Where(container_number=record.container_number))
            for record in collection.containers
        ),
        packings=tuple(
            clean(packing, Where(container_number=packing.container_number))
            for packing in collection.packings
        ),
    )
    return printable, tuple(findings)


def _clean(record: Record, where: Where, ruler: Ruler, findings: list[Finding]) -> Record:
    changed: dict[str, object] = {}
    for name, value in _fields_of(record):
        missing = "".join(dict.fromkeys(_missing_in(value, ruler)))
        if missing:
            table = {ord(sign): f"[{_code(sign)}]" for sign in missing}
            changed[name] = _translate(value, table)
            codes = ", ".join(_code(sign) for sign in missing)
            message = Sentence(
                "{name} holds {codes}, which no shipped font can print.", name=name, codes=codes
            )
            findings.append(make_finding("cannot-be-printed", where, message))
    return replace(record, **changed) if changed else record  # type: ignore[arg-type] # names come from the record itself


def _fields_of(record: object) -> Iterator[tuple[str, object]]:
    """Give the fields of a record that may be changed, none where it is no record."""
    for name in _names_of(cast("Hashable", type(record))):
        yield name, getattr(record, name)


@cache
def _names_of(kind: Hashable) -> tuple[str, ...]:
    if not is_dataclass(kind):
        return ()
    return tuple(field.name for field in fields(kind) if field.name not in _KEPT)


def _missing_in(value: object, ruler: Ruler) -> Iterator[str]:
    if isinstance(value, str):
        yield from ruler.missing_characters(value)
    elif isinstance(value, tuple):
        for part in value:
            yield from _missing_in(part, ruler)
    else:
        for _, part in _fields_of(value):
            yield from _missing_in(part, ruler)


def _translate(value: object, table: Mapping[int, str]) -> object:
    """Give the same with its texts translated; words of a list of ours are none of them."""
    if isinstance(value, str) and not isinstance(value, Enum):
        return value.translate(table)
    if isinstance(value, tuple):
        return tuple(_translate(part, table) for part in value)
    if is_dataclass(value) and not isinstance(value, type):
        return replace(value, **{name: _translate(one, table) for name, one in _fields_of(value)})
    return value


def _code(sign: str) -> str:
    return f"U+{ord(sign):04X}"


def keep_photos(collection: Collection, usable: Names[str]) -> Collection:
    """Leave out references to photos that cannot be used, so that cards say there is none."""
    objects = tuple(
        replace(record, photos=tuple(photo for photo in record.photos if photo.file in usable))
        for record in collection.objects
    )
    return replace(collection, objects=objects)
