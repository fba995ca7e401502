"""A cabinet drawer of four hundred coins, so that pages are looked at with very much on them."""

from __future__ import annotations

from pathlib import Path

from service.records.record import (
    Collection,
    ContainerKind,
    ContainerRecord,
    Hazard,
    HazardState,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
)
from service.store.open import open_folder, writing
from service.store.save_records import save_records
from tests.store.made import STAMP

CROWDED = "D-400"
_MANY = 400
_LEAD = Hazard("lead", HazardState.PRESUMED)


def add_crowd(folder: Path) -> None:
    """Put a drawer with four hundred objects into the store in a folder."""
    numbers = [f"2019.40.{number}" for number in range(1, _MANY + 1)]
    objects = tuple(
        ObjectRecord(
            number,
            "Token of the harbour ferry, worn, with a hole for a cord",
            "token",
            "19th century",
            materials=("lead",),
            hazards=(_LEAD,),
            cautions=("fragile",),
        )
        for number in numbers
    )
    places = tuple(
        PlaceRecord(number, (), 1 + at // 200, f"{chr(65 + at % 20)}{1 + at // 20 % 10}")
        for at, number in enumerate(numbers)
    )
    drawer = ContainerRecord(CROWDED, ContainerKind.DRAWER, title="Ferry tokens")
    records = Collection(
        objects=objects, containers=(drawer,), packings=(PackingRecord(CROWDED, 1, places),)
    )
    engine = open_folder(folder)
    with writing(engine) as connection:
        save_records(connection, records, stamp=STAMP)
    engine.dispose()
