from __future__ import annotations

from datetime import date

import pytest

from service.records.cells.hazards import split_hazard
from service.records.lido.export.notes import list_notes, write_hazard
from service.records.record import Hazard, HazardState, ObjectRecord, Part

DAY = date(2026, 10, 14)


def test_notes_stand_under_their_columns() -> None:
    """What a record says is listed by column, and what it does not say is not there."""
    record = ObjectRecord(
        "1", condition="worn", parts=(Part("a", "lid"), Part("b"), Part("", "cord"))
    )
    assert list_notes(record) == {"condition": ("worn",), "parts": ("a: lid", "b", "cord")}
    assert list_notes(ObjectRecord("1")) == {}


@pytest.mark.parametrize(
    ("hazard", "text"),
    [
        (Hazard("lead", HazardState.UNCHECKED), "lead: unchecked"),
        (
            Hazard("arsenic", HazardState.PRESUMED, "dye", "XRF", DAY, "R. Vane", DAY),
            "arsenic: presumed, dye, method XRF, on 2026-10-14, by R. Vane, review 2026-10-14",
        ),
    ],
    ids=["bare", "all"],
)
def test_hazards_are_written_as_in_a_cell(hazard: Hazard, text: str) -> None:
    """A hazard keeps its state and who checked it, in the form that cells have."""
    assert write_hazard(hazard) == text
    assert split_hazard(text)["state"] == hazard.state.value
