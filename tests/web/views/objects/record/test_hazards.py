from __future__ import annotations

from datetime import date

import pytest

from service.records.record import Hazard, HazardState
from service.web.views.objects.record.hazards import read_hazard_rows
from service.web.views.objects.record.values import write_hazard

LEAD = Hazard("lead", HazardState.PRESUMED, "grey metal", instruction="Ask the desk.")
OWN = Hazard("sticky resin", HazardState.UNCHECKED)
NONE = frozenset[int]()


def test_a_row_changes_a_hazard_and_another_adds_one() -> None:
    """What the row does not show stays; an empty row says nothing."""
    rows = (
        {**write_hazard(LEAD), "state": "confirmed", "checked_on": "2026-11-02"},
        {"code": "mould", "state": "unchecked", "note": ""},
        {"code": "", "state": "presumed"},
    )
    read = read_hazard_rows(rows, NONE, (LEAD,))
    assert read.faults == {}
    assert [(one.code, one.state.value) for one in read.hazards] == [
        ("lead", "confirmed"),
        ("mould", "unchecked"),
    ]
    assert read.hazards[0].instruction == "Ask the desk."
    assert read.hazards[0].checked_on == date(2026, 11, 2)


def test_a_recorded_hazard_stays_whatever_is_left_out() -> None:
    """Neither another code nor a missing row takes it away; one in own words is no fault."""
    other = read_hazard_rows(({**write_hazard(LEAD), "code": ""},), NONE, (LEAD, OWN))
    assert [one.code for one in other.hazards] == ["lead", "sticky resin"]
    own = read_hazard_rows((write_hazard(OWN),), NONE, (OWN,))
    assert (own.hazards, own.faults) == ((OWN,), {})


@pytest.mark.parametrize(
    ("note", "day", "is_taken"),
    [("XRF: tin", "2026-11-02", True), ("", "2026-11-02", False), ("XRF: tin", "", False)],
)
def test_it_goes_only_with_a_note_and_a_day(note: str, day: str, *, is_taken: bool) -> None:
    """Without them it is asked for beside the row."""
    row = {**write_hazard(LEAD), "note": note, "checked_on": day}
    read = read_hazard_rows((row,), frozenset({0}), (LEAD,))
    assert ("hazard-0" not in read.faults) is is_taken
    assert read.hazards == ()
    if is_taken:
        assert (read.gone[0].hazard, read.gone[0].note) == (LEAD, "XRF: tin")


def test_a_day_that_is_none_is_told_at_its_row() -> None:
    """With the words of the readers of spreadsheets."""
    row = {**write_hazard(LEAD), "review_on": "31.31.2026"}
    assert "hazard-0" in read_hazard_rows((row,), NONE, (LEAD,)).faults
