from __future__ import annotations

import pytest

from service.errors import CalibrationError
from service.sheets.calibration.readings import Axis, read_measurements
from service.sheets.calibration.ruler_sheet import crosses_on
from service.sheets.stocks import A4

CROSSES = crosses_on(A4)
CORNERS = ["A=15,15", "B=195,15", "C=15,282", "D=195,282"]


@pytest.mark.parametrize(
    ("typed", "across_mm", "down_mm"),
    [
        ("A=15.25,14.75", 15.25, 14.75),
        (" a = 15.25 , 14.75 ", 15.25, 14.75),
        ("A=15,14", 15, 14),
        ("A=15,25/14,75", 15.25, 14.75),
        ("A=15.25;14,75", 15.25, 14.75),
    ],
)
def test_reads_what_people_type(typed: str, across_mm: float, down_mm: float) -> None:
    """First across, then down; a decimal comma needs another sign between the two."""
    across, down, *_ = read_measurements([typed, *CORNERS[1:]], CROSSES)
    assert (across.axis, across.measured_mm) == (Axis.ACROSS, across_mm)
    assert (down.axis, down.measured_mm) == (Axis.DOWN, down_mm)
    assert across.cross == down.cross == CROSSES[0]


@pytest.mark.parametrize(
    ("typed", "fault"),
    [
        (["A=15"], "'A=15' cannot be read"),
        (["A=15,15,3"], "cannot be read"),
        (["A=-15,15"], "cannot be read"),
        (["A=1e9,15"], "cannot be read"),
        (["A=9999,15"], "cannot be read"),
        (["Z=15,15"], "there is no cross Z, only A, B"),
        (["A=15,15", "A=15,16"], "cross A is there twice"),
        (["A=15,282"], "cross A: down: measured 282 mm, expected about 15.0 mm"),
        (CORNERS[:3], "3 crosses were measured; at least 4"),
        ([], "0 crosses were measured"),
    ],
)
def test_refuses_what_is_no_measurement(typed: list[str], fault: str) -> None:
    """Each mistake is told in words, with what was typed."""
    with pytest.raises(CalibrationError) as trouble:
        read_measurements(typed, CROSSES)
    assert fault in str(trouble.value)


def test_tells_all_mistakes_at_once() -> None:
    """Whoever typed two things wrongly need not come back twice."""
    with pytest.raises(CalibrationError) as trouble:
        read_measurements(["A=15", "Z=1,1", *CORNERS], CROSSES)
    assert len(trouble.value.faults) == 2


def test_a_departure_is_what_is_too_much() -> None:
    """Ink too far right or too low counts positive."""
    across, down, *_ = read_measurements(["A=17,14.5", *CORNERS[1:]], CROSSES)
    assert (across.departure_mm, down.departure_mm) == (2.0, -0.5)
