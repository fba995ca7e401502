from __future__ import annotations

import math
import random
from dataclasses import replace

import numpy as np
import pytest

from service.errors import CalibrationError
from service.geometry import Point, Size
from service.sheets.calibration.calibrate import calibrate
from service.sheets.calibration.readings import Axis, Reading
from service.sheets.calibration.ruler_sheet import crosses_on
from service.sheets.correction import Correction
from service.sheets.stocks import A4, A5, LETTER
from tests.sheets.calibration.simulated import any_printer, measure

CROSSES = crosses_on(A4)


def exact(printer: Correction, count: int = 8) -> list[Reading]:
    """Measure without any error."""
    readings = []
    for cross in CROSSES[:count]:
        landed = printer.moved(cross.place)
        readings.append(Reading(cross, Axis.ACROSS, landed.x_mm))
        readings.append(Reading(cross, Axis.DOWN, landed.y_mm))
    return readings


@pytest.mark.parametrize("seed", range(30))
def test_fits_as_another_library_does(seed: int) -> None:
    """Printer and residuals are those of numpy's least squares on the same noisy measures."""
    rng = random.Random(seed)  # noqa: S311 - no secret
    crosses = rng.sample(CROSSES, rng.randint(5, 8))
    readings = measure(any_printer(rng), crosses, rng)
    found = calibrate(readings)
    places = np.array([(1, cross.place.x_mm, cross.place.y_mm) for cross in crosses])
    for axis, mine in (
        (Axis.ACROSS, (found.printer.shift_x_mm, found.printer.xx, found.printer.xy)),
        (Axis.DOWN, (found.printer.shift_y_mm, found.printer.yx, found.printer.yy)),
    ):
        seen = np.array([each.measured_mm for each in readings if each.axis is axis])
        outside = np.linalg.lstsq(places, seen, rcond=None)[0]
        assert mine == pytest.approx(outside.tolist(), abs=1e-8)
        left_over = seen - places @ outside
        told = [each.across_mm if axis is Axis.ACROSS else each.down_mm for each in found.residuals]
        assert told == pytest.approx(left_over.tolist(), abs=1e-8)


@pytest.mark.parametrize("count", [4, 6, 8])
def test_an_exact_measure_gives_the_exact_correction(count: int) -> None:
    """Two millimetres, half a per cent and a third of a degree are found to the last digit."""
    printer = Correction(1.005, -0.006, 0.0058, 0.998, 2.0, -1.5)
    found = calibrate(exact(printer, count))
    assert found.largest_residual_mm == pytest.approx(0, abs=1e-9)
    back = printer.moved(found.correction.moved(Point(123.4, 234.5)))
    assert (back.x_mm, back.y_mm) == pytest.approx((123.4, 234.5), abs=1e-9)


@pytest.mark.parametrize("page", [A4, A5, LETTER], ids=["A4", "A5", "Letter"])
def test_corrected_sheets_are_true_to_three_tenths(page: Size) -> None:
    """Measured to a quarter millimetre, the corners of the paper come right to 0.3 mm, 95 in 100.

    The corners lie outside the crosses: nowhere on the sheet is the error larger.
    """
    rng = random.Random(7)  # noqa: S311 - no secret
    errors_mm = []
    for _ in range(200):
        printer = any_printer(rng)
        correction = calibrate(measure(printer, crosses_on(page), rng)).correction
        for x_mm, y_mm in ((0, 0), (page.width_mm, 0), (0, page.height_mm)):
            landed = printer.moved(correction.moved(Point(x_mm, y_mm)))
            errors_mm.append(math.hypot(landed.x_mm - x_mm, landed.y_mm - y_mm))
    errors_mm.sort()
    assert errors_mm[int(len(errors_mm) * 0.95)] < 0.3
    assert errors_mm[-1] < 0.5


def test_a_wrong_measure_is_told_with_what_was_expected() -> None:
    """The message names cross, way, what was typed and what the others say."""
    readings = exact(Correction(shift_x_mm=1.0))
    wrong = next(each for each in readings if each.cross.name == "C" and each.axis == "across")
    readings[readings.index(wrong)] = replace(wrong, measured_mm=21.0)
    with pytest.raises(CalibrationError) as trouble:
        calibrate(readings)
    assert trouble.value.faults == (
        "cross C: across: measured 21 mm, expected about 16.0 mm: measure it again",
    )


def test_what_cannot_be_told_apart_is_said() -> None:
    """With four crosses, two millimetres could be wrong at several: each is named."""
    readings = exact(Correction(), 4)
    readings[0] = replace(readings[0], measured_mm=17.0)
    with pytest.raises(CalibrationError, match=r"one of these is wrong: .*cross A: across.*; or"):
        calibrate(readings)


def test_measures_without_sense_are_refused_as_a_whole() -> None:
    """Where more than a few are wrong, all must be measured again."""
    rng = random.Random(3)  # noqa: S311 - no secret
    readings = [
        replace(each, measured_mm=each.wanted_mm + rng.uniform(-20, 20))
        for each in exact(Correction())
    ]
    with pytest.raises(CalibrationError, match="measure all crosses again"):
        calibrate(readings)


def test_impossible_printers_are_refused() -> None:
    """A print at 96 % is told as one that was fitted to the page."""
    with pytest.raises(CalibrationError, match=r"4\.00 % too small across.*100 %"):
        calibrate(exact(Correction(xx=0.96, yy=0.96, shift_x_mm=4, shift_y_mm=6)))


def test_crosses_in_one_line_are_not_enough() -> None:
    """Crosses on one line leave open what happens beside it."""
    line = [
        Reading(replace(CROSSES[0], name=name, place=Point(15, y_mm)), axis, value_mm)
        for name, y_mm in (("A", 15.0), ("B", 90.0), ("C", 180.0), ("D", 282.0))
        for axis, value_mm in ((Axis.ACROSS, 15.0), (Axis.DOWN, y_mm))
    ]
    with pytest.raises(CalibrationError, match="one line"):
        calibrate(line)
