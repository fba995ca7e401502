"""Readies records for print: signs no font holds are replaced, photos that failed are let go."""

from __future__ import annotations

from collections.abc import Collection as Names
from collections.abc import Iterator
from dataclasses import fields, replace
from typing import TypeVar

from service.findings import Finding, Where, make_finding
from service.pages.ruler import Ruler
from service.records.record import Collection, ContainerRecord, ObjectRecord

Record = TypeVar("Record", ObjectRecord, ContainerRecord)


def replace_missing(collection: Collection, ruler: Ruler) -> tuple[Collection, tuple[Finding, ...]]:
    """Write each character no shipped font holds as its code, and report it; never an empty box."""
    findings: list[Finding] = []
    objects = tuple(
        _clean(record, Where(object_number=record.object_number), ruler, findings)
        for record in collection.objects
    )
    containers = tuple(
        _clean(record, Where(container_number=record.container_number), ruler, findings)
        for record in collection.containers
    )
    return replace(collection, objects=objects, containers=containers), tuple(findings)


def _clean(record: Record, where: Where, ruler: Ruler, findings: list[Finding]) -> Record:
    changed: dict[str, object] = {}
    for field in fields(record):
        value = getattr(record, field.name)
        missing = "".join(dict.fromkeys(_missing_in(value, ruler)))
        if not missing or field.name in {"object_number", "container_number", "source", "photos"}:
            continue
        table = {ord(sign): f"[{_code(sign)}]" for sign in missing}
        changed[field.name] = (
            value.translate(table)
            if isinstance(value, str)
            else tuple(part.translate(table) if isinstance(part, str) else part for part in value)
        )
        codes = ", ".join(_code(sign) for sign in missing)
        message = f"{field.name} holds {codes}, which no shipped font can print."
        findings.append(make_finding("cannot-be-printed", where, message))
    return replace(record, **changed)  # type: ignore[arg-type] # names come from the record itself


def _missing_in(value: object, ruler: Ruler) -> Iterator[str]:
    if isinstance(value, str):
        yield from ruler.missing_characters(value)
    elif isinstance(value, tuple):
        for part in value:
            yield from _missing_in(part, ruler)


def _code(sign: str) -> str:
    return f"U+{ord(sign):04X}"


def keep_photos(collection: Collection, usable: Names[str]) -> Collection:
    """Leave out references to photos that cannot be used, so that cards say there is none."""
    objects = tuple(
        replace(record, photos=tuple(photo for photo in record.photos if photo.file in usable))
        for record in collection.objects
    )
    return replace(collection, objects=objects)
