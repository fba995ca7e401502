from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from service.geometry import Size
from service.records.measures import Grid, Measure
from service.records.record import (
    ContainerKind,
    ContainerRecord,
    Lid,
    Questions,
    Weight,
    WeightBasis,
)
from service.web.views.containers.record.read import read_container
from service.web.views.containers.record.values import write_values

FULL = ContainerRecord(
    "B/1",
    ContainerKind.DRAWER,
    "Charts",
    ("Store 1", "Bay 2"),
    Lid.NONE,
    Size(400, 300),
    Size(300.5, 120),
    (Measure("height", 100), Measure("width", 400), Measure("depth", 300)),
    Grid(4, 3),
    Weight(1250),
    Weight(6200.25, WeightBasis.ESTIMATED),
    ("tissue", "foam"),
    900.0,
    "B-2",
    0,
    12000.0,
    "left",
    date(2027, 1, 2),
    Questions("Collections desk", "555 0142", "A. Quill"),
    "Slides out to the left",
)


def test_what_is_written_reads_the_same() -> None:
    """No field is lost or changed by showing and sending a form."""
    read = read_container(write_values(FULL))
    assert read.record == FULL
    assert read.faults == {}


TYPED = {
    "lid_size": ("30 x 40 cm", replace(FULL, lid_size=Size(300, 400))),
    "gross_weight": ("6.2 kg", replace(FULL, gross=Weight(6200))),
    "tare_weight": ("2 lb", replace(FULL, tare=Weight(907.185))),
    "location": ("Store 1/ Bay 9", replace(FULL, location=("Store 1", "Bay 9"))),
    "stacking_limit": ("", replace(FULL, stacking_limit=None)),
    "kind": ("box", replace(FULL, kind=ContainerKind.BOX)),
    "temporary_until": ("31 Jan 2027", replace(FULL, temporary_until=date(2027, 1, 31))),
}


@pytest.mark.parametrize(("name", "typed"), list(TYPED.items()), ids=TYPED)
def test_it_is_typed_as_in_a_spreadsheet(name: str, typed: tuple[str, ContainerRecord]) -> None:
    """What the reader of spreadsheets understands, the form does."""
    text, wanted = typed
    read = read_container({**write_values(FULL), name: text}, was=FULL)
    assert (read.record, read.faults) == (wanted, {})


FAULTY = {
    "lid_size": "30 x",
    "gross_weight": "6.2",
    "stacking_limit": "some",
    "temporary_until": "3/4/2027",
    "compartments": "many",
}


@pytest.mark.parametrize(("name", "text"), FAULTY.items(), ids=FAULTY)
def test_what_is_not_understood_is_told_at_its_field(name: str, text: str) -> None:
    """With what to write instead."""
    assert list(read_container({**write_values(FULL), name: text}).faults) == [name]


def test_a_container_needs_a_number() -> None:
    """Nothing else is needed."""
    assert list(read_container({"container_number": " "}).faults) == ["container_number"]
    assert read_container({"container_number": "B/7"}).record == ContainerRecord("B/7")


def test_what_was_not_typed_anew_keeps_all_its_digits() -> None:
    """A measure that its text rounds is not changed by a form that only changes the title."""
    exact = replace(FULL, lid_size=Size(400.123456789, 300), source={"Inv.": "7"})
    read = read_container({**write_values(exact), "title": "Maps"}, was=exact)
    assert read.record == replace(exact, title="Maps")
    assert read.record.source == {"Inv.": "7"}
