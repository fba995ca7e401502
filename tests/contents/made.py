"""Objects, containers and packings made by hand, for every test that words or fits a card."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date

from service.contents.arrange import Arrangement, arrange_packings
from service.contents.packing import Packing
from service.geometry import Size
from service.records.record import (
    Collection,
    ContainerKind,
    ContainerRecord,
    Hazard,
    HazardState,
    Museum,
    ObjectRecord,
    PackingRecord,
    PhotoReference,
    PlaceRecord,
    Questions,
    Weight,
)

NUMBER = "B-042"
MUSEUM = Museum(
    name="Port Merrow Museum",
    object_address="https://collections.example/o/{object_number}",
    container_address="https://collections.example/c/{container_number}",
    questions=Questions("Collections desk", "ext. 214"),
)
BOX = ContainerRecord(NUMBER, title="Small finds", lid_size=Size(300, 200))
GARMENT_COVER = ContainerRecord("G-7", ContainerKind.GARMENT_COVER, "Dresses")

A6 = Size(105.0, 148.0)
A5 = Size(148.0, 210.0)
A4 = Size(210.0, 297.0)
LETTER = Size(215.9, 279.4)


def hazard(code: str, state: HazardState = HazardState.CONFIRMED) -> Hazard:
    """Make a hazard with no more than its code and state."""
    return Hazard(code, state)


def objects(count: int, *, title: str = "Brass buckle, cast") -> tuple[ObjectRecord, ...]:
    """Make objects that differ in number and title, every one with a photo and a weight."""
    return tuple(
        ObjectRecord(
            f"1987.412.{index}",
            title=f"{title} {index}",
            photos=(PhotoReference(f"{index}.jpg"),),
            weight=Weight(120.0),
        )
        for index in range(1, count + 1)
    )


def packing(
    records: Iterable[ObjectRecord],
    container: ContainerRecord = BOX,
    *,
    places: Sequence[PlaceRecord] = (),
    revision: int = 3,
) -> Packing:
    """Pack objects into one container, in the order given where no places are named."""
    kept = tuple(records)
    named = tuple(places) or tuple(PlaceRecord(record.object_number) for record in kept)
    record = PackingRecord(
        container.container_number, revision, named, "I. Hale", date(2026, 10, 14)
    )
    collection = Collection(MUSEUM, kept, (container,), (record,))
    return arrange_packings(collection).packings[0]


def arrange(
    containers: Sequence[ContainerRecord],
    packings: Sequence[PackingRecord] = (),
    records: Sequence[ObjectRecord] = (),
) -> Arrangement:
    """Arrange a collection of these records."""
    return arrange_packings(Collection(MUSEUM, tuple(records), tuple(containers), tuple(packings)))
