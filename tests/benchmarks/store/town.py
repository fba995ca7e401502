"""A made-up town of boxes: as many objects as a large store has, all records, no photos."""

from __future__ import annotations

import random
from datetime import date

from service.records.record import (
    Collection,
    ContainerRecord,
    Hazard,
    HazardState,
    Museum,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
    Questions,
    Weight,
)

_NOUNS = ("Bait jar", "Lead line", "Net float", "Signal lamp", "Ship's biscuit", "Oilskin")
_MATERIALS = ("stoneware", "lead", "cork", "brass", "flour", "cotton")


def make_town(containers: int, objects: int) -> Collection:
    """Make so many objects in so many containers; the same numbers give the same town."""
    chance = random.Random(20261125)  # noqa: S311  Records to measure with, no secrets.
    records = tuple(_object(number, chance) for number in range(objects))
    boxes = tuple(_box(number) for number in range(containers))
    lying: list[list[PlaceRecord]] = [[] for _ in boxes]
    for number, record in enumerate(records):
        layer = 1 + number // containers % 2
        lying[number % containers].append(PlaceRecord(record.object_number, layer=layer))
    packings = tuple(
        PackingRecord(box.container_number, 1, tuple(places), "I. Hale", date(2026, 10, 14))
        for box, places in zip(boxes, lying, strict=True)
    )
    museum = Museum(
        "Port Merrow Museum",
        container_address="https://collections.portmerrow.example/c/{container_number}",
        questions=Questions("Collections desk", "555 0142"),
    )
    return Collection(museum, records, boxes, packings)


def _object(number: int, chance: random.Random) -> ObjectRecord:
    kind = chance.randrange(len(_NOUNS))
    return ObjectRecord(
        f"{1900 + number % 120}.{number // 120}.{number % 7 + 1}",
        title=f"{_NOUNS[kind]} no. {number}",
        materials=(_MATERIALS[kind],),
        weight=Weight(float(chance.randrange(50, 5_000))) if chance.random() < 0.5 else None,
        hazards=(Hazard("lead", HazardState.PRESUMED),) if kind == 1 else (),
        cautions=("fragile",) if kind == 0 else (),
        source={"Inv.": str(number), "Titel": _NOUNS[kind]},
    )


def _box(number: int) -> ContainerRecord:
    return ContainerRecord(
        f"B-{number:05}",
        title=f"Fishery {number % 50}",
        location=("Long Store", f"bay {number // 100}", f"shelf {number % 8}"),
    )
