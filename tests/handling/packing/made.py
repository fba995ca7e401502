"""Packings made by hand for the tests of packing checks."""

from __future__ import annotations

from dataclasses import replace

from service.contents.packing import Packing
from service.findings import Finding
from service.handling.packing.check import check_packing
from service.handling.packing.report import Known
from service.records.record import ContainerKind, ContainerRecord, ObjectRecord, PlaceRecord, Weight
from tests.contents.made import packing

BOX = ContainerRecord("B-1")
COVER = ContainerRecord("G-1", ContainerKind.GARMENT_COVER)
Lies = tuple[ObjectRecord, PlaceRecord]


def thing(number: str, *materials: str, **fields: object) -> ObjectRecord:
    """Make an object of these materials."""
    record = ObjectRecord(number, materials=materials)
    return replace(record, **fields)  # type: ignore[arg-type] # any field


def weighed(number: str, weight_g: float, *cautions: str) -> ObjectRecord:
    """Make an object of a known weight."""
    return ObjectRecord(number, weight=Weight(weight_g), cautions=cautions)


def pack(
    *lying: ObjectRecord | Lies, container: ContainerRecord = BOX, **fields: object
) -> Packing:
    """Pack objects; one that is given with its place lies there, the others anywhere."""
    pairs = [
        one if isinstance(one, tuple) else (one, PlaceRecord(one.object_number)) for one in lying
    ]
    changed = replace(container, **fields)  # type: ignore[arg-type] # any field
    return packing([record for record, _ in pairs], changed, places=[place for _, place in pairs])


def at(record: ObjectRecord, *, layer: int = 1, compartment: str = "", note: str = "") -> Lies:
    """Put an object at a place."""
    return record, PlaceRecord(record.object_number, (), layer, compartment, note)


def found(made: Packing, known: Known | None = None) -> list[tuple[str, str]]:
    """Give code and object number of everything that is noticed."""
    return [
        (finding.code, finding.where.object_number) for finding in noticed(made, known or Known())
    ]


def noticed(made: Packing, known: Known | None = None) -> tuple[Finding, ...]:
    """Give everything that is noticed."""
    return check_packing(made, known or Known())
