"""Matches packings with objects and containers, and orders what they hold."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from service.contents.packing import Layer, PackedObject, Packing
from service.findings import Finding, Where, make_finding
from service.records.measures import Grid
from service.records.naturally import natural_key, sort_naturally
from service.records.record import (
    Collection,
    ContainerRecord,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
)
from service.sentence import Sentence


@dataclass(frozen=True, slots=True)
class Arrangement:
    """Packings in natural order of their containers, and what did not agree."""

    packings: tuple[Packing, ...]
    findings: tuple[Finding, ...]


def arrange_packings(collection: Collection) -> Arrangement:
    """Match every packing with its container and objects.

    Of several packings of one container the highest revision counts. A packing of a container that
    is not in the records is a finding and is left out; an object that is not in the records is a
    finding and stays, with its number alone.
    """
    findings: list[Finding] = []
    containers = {record.container_number: record for record in collection.containers}
    objects = {record.object_number: record for record in collection.objects}
    latest = _latest_packings(collection.packings, containers, findings)
    places = [(record, place) for record in latest.values() for place in record.places]
    elsewhere = _find_elsewhere(places, findings)
    flat = {
        number: _arrange_one(containers[number], record, objects, elsewhere, findings)
        for number, record in latest.items()
    }
    unpacked = {
        number: Packing(container, 1, ())
        for number, container in containers.items()
        if number not in flat
    }
    flat.update(unpacked)
    nested = _nest(flat, findings)
    findings.extend(
        make_finding(
            "empty-container", Where(container_number=number), Sentence("Nothing is packed in it.")
        )
        for number, packing in nested.items()
        if not packing.everything
    )
    ordered = sort_naturally(
        nested.values(), number=lambda packing: packing.container.container_number
    )
    return Arrangement(tuple(ordered), tuple(findings))


def _latest_packings(
    packings: Iterable[PackingRecord],
    containers: Mapping[str, ContainerRecord],
    findings: list[Finding],
) -> dict[str, PackingRecord]:
    latest: dict[str, PackingRecord] = {}
    for record in packings:
        number = record.container_number
        if number not in containers:
            findings.append(
                make_finding(
                    "unknown-container",
                    Where(container_number=number),
                    Sentence(
                        "A packing names container {number}, which is not in the records.",
                        number=number,
                    ),
                )
            )
        elif number not in latest or record.revision > latest[number].revision:
            latest[number] = record
    return latest


def _find_elsewhere(
    places: Sequence[tuple[PackingRecord, PlaceRecord]], findings: list[Finding]
) -> dict[str, list[tuple[tuple[str, ...], str]]]:
    """List where each object's parts lie, and report the same part in two places."""
    by_object: dict[str, list[tuple[tuple[str, ...], str]]] = defaultdict(list)
    for packing, place in places:
        seen = by_object[place.object_number]
        clash = next((spot for spot in seen if _share_a_part(spot[0], place.parts)), None)
        if clash:
            what = ", ".join(sorted(set(clash[0]) & set(place.parts))) or Sentence("the object")
            findings.append(
                make_finding(
                    "object-in-two-places",
                    Where(
                        container_number=packing.container_number,
                        object_number=place.object_number,
                    ),
                    Sentence(
                        "{object_number} ({what}) is packed in {other} and in {container_number}.",
                        object_number=place.object_number,
                        what=what,
                        other=clash[1],
                        container_number=packing.container_number,
                    ),
                )
            )
        seen.append((place.parts, packing.container_number))
    return by_object


def _share_a_part(first: tuple[str, ...], second: tuple[str, ...]) -> bool:
    """Tell whether two lists of parts overlap; an empty list is the whole object."""
    return not first or not second or bool(set(first) & set(second))


def _arrange_one(
    container: ContainerRecord,
    record: PackingRecord,
    objects: Mapping[str, ObjectRecord],
    elsewhere: Mapping[str, list[tuple[tuple[str, ...], str]]],
    findings: list[Finding],
) -> Packing:
    packed: list[PackedObject] = []
    for place in record.places:
        known = place.object_number in objects
        where = Where(
            container_number=container.container_number, object_number=place.object_number
        )
        if not known:
            message = Sentence(
                "{object_number} is packed here and is not in the records.",
                object_number=place.object_number,
            )
            findings.append(make_finding("unknown-object", where, message))
        findings.extend(_check_compartment(place, container.compartments, where))
        others = tuple(
            spot
            for spot in elsewhere[place.object_number]
            if spot != (place.parts, container.container_number)
        )
        shown = objects.get(place.object_number, ObjectRecord(place.object_number))
        packed.append(PackedObject(shown, place, known, others))
    return Packing(
        container=container,
        revision=record.revision,
        layers=_group_layers(packed),
        packed_by=record.packed_by,
        packed_on=record.packed_on,
        reason=record.reason,
    )


def _group_layers(packed: Sequence[PackedObject]) -> tuple[Layer, ...]:
    """Group by layer from the top; within a layer by compartment, then as listed."""
    layers: dict[int, list[PackedObject]] = defaultdict(list)
    for item in packed:
        layers[item.place.layer].append(item)
    return tuple(
        Layer(number, tuple(sorted(layers[number], key=_compartment_key)))
        for number in sorted(layers)
    )


def _compartment_key(packed: PackedObject) -> tuple[bool, object]:
    compartment = packed.place.compartment
    return (not compartment, natural_key(compartment))


def _check_compartment(place: PlaceRecord, grid: Grid | None, where: Where) -> Iterable[Finding]:
    """Report a compartment that the container's grid does not have."""
    cell = find_cell(place.compartment)
    if grid is None or cell is None:
        return
    column, row = cell
    if column >= grid.columns or row >= grid.rows:
        yield make_finding(
            "compartment-outside-grid",
            where,
            Sentence(
                "Compartment {compartment} is outside {columns} x {rows}.",
                compartment=place.compartment,
                columns=grid.columns,
                rows=grid.rows,
            ),
        )


def find_cell(compartment: str) -> tuple[int, int] | None:
    """Read a compartment such as B3 as (column, row), both from 0; None for any other name."""
    letter, digits = compartment[:1].upper(), compartment[1:]
    if not ("A" <= letter <= "Z") or not digits.isascii() or not digits.isdigit():
        return None
    number = int(digits)
    return (number - 1, ord(letter) - ord("A")) if number > 0 else None


def _nest(flat: Mapping[str, Packing], findings: list[Finding]) -> dict[str, Packing]:
    """Put the containers that lie in others into them; a circle is a finding and is cut."""
    children: dict[str, list[str]] = defaultdict(list)
    for number, packing in flat.items():
        outer = packing.container.inside
        if outer in flat and not _is_circle(number, flat):
            children[outer].append(number)
        elif outer:
            known = outer in flat
            code = "nested-in-itself" if known else "unknown-container"
            message = (
                Sentence(
                    "{number} is said to lie in {outer}, which lies in it.",
                    number=number,
                    outer=outer,
                )
                if known
                else Sentence(
                    "{number} is said to lie in {outer}, which is not in the records.",
                    number=number,
                    outer=outer,
                )
            )
            findings.append(make_finding(code, Where(container_number=number), message))

    def build(number: str) -> Packing:
        inner = sort_naturally(children[number], number=str)
        return replace(flat[number], nested=tuple(build(child) for child in inner))

    return {number: build(number) for number in flat}


def _is_circle(number: str, flat: Mapping[str, Packing]) -> bool:
    seen = {number}
    outer = flat[number].container.inside
    while outer in flat and outer not in seen:
        seen.add(outer)
        outer = flat[outer].container.inside
    # What only hangs on a circle of others comes to one of them, never back to itself.
    return outer == number
