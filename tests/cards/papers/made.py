"""Papers made by hand for the tests that word, fit and print them."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from service.cards.papers.check_sheet import CheckSheet, SheetRow, Visit, compose_sheet_row
from service.cards.papers.isolation_label import Isolation, IsolationLabel, label_container
from service.cards.papers.removal_slip import RemovalSlip, Taken, compose_removal_slip
from service.contents.packing import Packing
from service.handling.checks.due import plan_checks
from service.records.record import (
    Hazard,
    HazardState,
    Museum,
    ObjectRecord,
    PhotoReference,
    PlaceRecord,
    Weight,
)
from tests.contents.made import BOX, MUSEUM, packing

TODAY = date(2026, 11, 25)
SHOWN = replace(MUSEUM, show_location=True)
LEAD = ObjectRecord(
    "1931.14.2",
    "Sounding lead with line",
    photos=(PhotoReference("lead.jpg"),),
    hazards=(Hazard("lead", HazardState.PRESUMED),),
    cautions=("loose-parts",),
    weight=Weight(1430.0),
)
BONES = ObjectRecord(
    "1959.40.20",
    "Finger bones, wired",
    photos=(PhotoReference("bones.jpg"),),
    hazards=(Hazard("human-remains", HazardState.CONFIRMED),),
)
GUN = ObjectRecord(
    "1946.9.3",
    "Signal pistol",
    photos=(PhotoReference("gun.jpg"),),
    hazards=(Hazard("firearm", HazardState.CONFIRMED),),
)
JAR = ObjectRecord("1987.412.9", "Bait jar")
TAKEN = Taken(
    3, ("a", "b"), "I. Hale, studio", "to be drawn", "Ada Quill", TODAY, date(2026, 12, 1)
)
ISOLATION = Isolation(TODAY, None, "Pests found", "Ada Quill")
SHELVED = replace(BOX, location=("Long Store", "bay 4"))


def box(*records: ObjectRecord) -> Packing:
    """Pack objects into a box that stands in bay 4, each in a compartment."""
    places = [
        PlaceRecord(one.object_number, compartment=f"A{n}") for n, one in enumerate(records, 1)
    ]
    return packing(records, SHELVED, places=places)


def slip_of(record: ObjectRecord, taken: Taken = TAKEN, museum: Museum = SHOWN) -> RemovalSlip:
    """Word the slip of an object."""
    packed = box(record)
    return compose_removal_slip(packed.contents[0], packed.container, taken, museum)


def row_of(*records: ObjectRecord, number: str = "B-042", museum: Museum = SHOWN) -> SheetRow:
    """Word the row of a box in which nothing was ever checked."""
    packed = box(*records)
    packed = replace(packed, container=replace(packed.container, container_number=number))
    visit = Visit(packed, plan_checks(packed, []), "Long Store, bay 4", ("Out: X.1 (slip 4)",))
    return compose_sheet_row(visit, museum, today=TODAY)


def sheet_of(rows: int, *records: ObjectRecord) -> CheckSheet:
    """Give a sheet of so many boxes alike."""
    each = tuple(row_of(*records, number=f"B-{number:03}") for number in range(rows))
    return CheckSheet("Port Merrow Museum", "25 Nov 2026, Ada Quill", "", "Collections desk", each)


def label_of(*records: ObjectRecord) -> IsolationLabel:
    """Word the label of a box."""
    return label_container(box(*records), ISOLATION, SHOWN)
