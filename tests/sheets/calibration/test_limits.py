from __future__ import annotations

import math

import pytest

from service.sheets.calibration.limits import describe, explain_residual, impossible
from service.sheets.correction import NO_CORRECTION, Correction

TURN = math.radians(2.5)
OFF = Correction(1.005, 0.0, 0.0, 0.998, 2.0, -1.5)


@pytest.mark.parametrize(
    ("printer", "fault"),
    [
        (Correction(xx=0.96), "4.00 % too small across"),
        (Correction(yy=1.031), "3.10 % too large down"),
        (
            Correction(math.cos(TURN), -math.sin(TURN), math.sin(TURN), math.cos(TURN)),
            "turned by 2.5 degrees",
        ),
        (Correction(xy=0.02), "right angles are off by 1.1 degrees"),
        (Correction(shift_x_mm=8, shift_y_mm=7), "shifted by 10.6 mm"),
        (Correction(shift_x_mm=math.nan), "shifted"),
    ],
    ids=["small", "large", "turn", "skew", "shift", "no number"],
)
def test_says_what_no_printer_does(printer: Correction, fault: str) -> None:
    """Each limit is told with the figure, and alone."""
    (said,) = impossible(printer)
    assert fault in said


@pytest.mark.parametrize("printer", [NO_CORRECTION, OFF])
def test_lets_real_printers_pass(printer: Correction) -> None:
    """Two millimetres and half a per cent are nothing special."""
    assert list(impossible(printer)) == []


def test_describes_a_printer() -> None:
    """The words give shift with its direction, stretch both ways, turn and skew."""
    assert describe(OFF) == (
        "at the top left corner 2.00 mm too far right and 1.50 mm too high; 0.50 % too large"
        " across, 0.20 % too small down; turned 0.00 degrees clockwise, right angles off by 0.00"
        " degrees"
    )


def test_a_residual_is_told_in_words() -> None:
    """A quarter of a millimetre is what a ruler leaves; beyond half of one it is doubted."""
    assert "a ruler can be read" in explain_residual(0.25)
    assert "good enough" in explain_residual(0.26)
    assert "measure again" in explain_residual(0.51)
