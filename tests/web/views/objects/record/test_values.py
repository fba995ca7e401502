from __future__ import annotations

from datetime import date

from service.records.measures import Measure
from service.records.record import Hazard, HazardState, ObjectRecord, Part, Weight
from service.web.views.objects.record.read import Typed, read_object
from service.web.views.objects.record.values import write_hazard, write_values

FULL = ObjectRecord(
    "1931.14.9",
    title="Fid",
    object_name="fid",
    period="about 1880",
    number_of_parts=2,
    parts=(Part("a", "lid"), Part("b"), Part("", "cord")),
    accessories=("stand", "key"),
    materials=("lignum vitae", "hemp"),
    dimensions=(Measure("height", 40.0), Measure("width", 20.0)),
    weight=Weight(1200.0),
    condition="sound",
    handling_notes="both hands",
    hazards=(
        Hazard(
            "lead",
            HazardState.CONFIRMED,
            "bloom",
            "XRF",
            date(2024, 3, 12),
            "R. Vane",
            None,
            "Ask.",
        ),
    ),
    cautions=("fragile", "our own caution"),
    hang_factors=("beads",),
    former_numbers=("PM 22",),
    catalogue_url="https://portmerrow.example/9",
    restricted=True,
)


def test_what_is_written_is_read_the_same() -> None:
    """Typed in anew as it is shown, a record stays as it was, weight and measures included."""
    rows = tuple(write_hazard(one) for one in FULL.hazards)
    read = read_object(Typed(write_values(FULL), rows), was=FULL)
    assert read.faults == {}
    assert read.record == FULL


def test_as_new_it_says_the_same_but_for_what_no_form_shows() -> None:
    """The texts of measures are kept as typed; the instruction of a hazard has no field."""
    rows = tuple(write_hazard(one) for one in FULL.hazards)
    read = read_object(Typed(write_values(FULL), rows)).record
    assert read.dimensions == FULL.dimensions
    assert read.weight == FULL.weight
    assert read.parts == FULL.parts
    assert read.hazards[0].checked_on == date(2024, 3, 12)
    assert read.hazards[0].instruction == ""
