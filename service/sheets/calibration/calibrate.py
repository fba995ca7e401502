"""From measures of a ruler sheet to the correction of a printer."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from service.errors import CalibrationError
from service.geometry import Point
from service.sentence import Sentence
from service.sheets.calibration.doubt import Doubt, find_doubts
from service.sheets.calibration.least_squares import fit
from service.sheets.calibration.limits import impossible
from service.sheets.calibration.readings import Axis, Reading
from service.sheets.calibration.ruler_sheet import Cross
from service.sheets.correction import Correction

_UNIT_MM = 100.0


@dataclass(frozen=True, slots=True)
class Residual:
    """How far a measured cross lies from where the fit puts it."""

    cross: Cross
    across_mm: float
    down_mm: float

    @property
    def distance_mm(self) -> float:
        """The distance as the crow flies."""
        return math.hypot(self.across_mm, self.down_mm)


@dataclass(frozen=True, slots=True)
class Calibration:
    """What the measures say.

    Attributes:
        printer: Where ink lands that is sent to a point of the sheet.
        correction: Where to send ink instead: the way back.
        residuals: What is left over, cross by cross.
    """

    printer: Correction
    correction: Correction
    residuals: tuple[Residual, ...]

    @property
    def largest_residual_mm(self) -> float:
        """The distance of the cross that fits worst."""
        return max(residual.distance_mm for residual in self.residuals)


def calibrate(readings: Sequence[Reading]) -> Calibration:
    """Fit shift, scale, rotation and skew to both measures of at least four crosses.

    Raises:
        CalibrationError: When a measure contradicts the others, the crosses lie in one line, or no
            printer is off in this way.
    """
    if faults := list(_contradictions(find_doubts(readings))):
        raise CalibrationError(faults)
    printer = _fit_printer(readings)
    if faults := list(impossible(printer)):
        raise CalibrationError(faults)
    return Calibration(printer, printer.inverse(), tuple(_residuals(readings, printer)))


def _contradictions(doubts: Sequence[Sequence[Doubt]]) -> Iterator[str]:
    for group in doubts:
        said = [doubt.reading.doubted(doubt.expected_mm) for doubt in group]
        if not said:
            yield Sentence("the measures do not agree with each other: measure all crosses again")
        elif len(said) == 1:
            yield said[0]
        else:
            yield Sentence("one of these is wrong: {said}", said="; or ".join(said))


def _fit_printer(readings: Sequence[Reading]) -> Correction:
    xx, xy, shift_x_mm = _fit_axis(readings, Axis.ACROSS)
    yx, yy, shift_y_mm = _fit_axis(readings, Axis.DOWN)
    return Correction(1 + xx, xy, yx, 1 + yy, shift_x_mm, shift_y_mm)


def _fit_axis(readings: Sequence[Reading], axis: Axis) -> tuple[float, float, float]:
    """Give how the departure along an axis grows to the right and downwards, and begins.

    Raises:
        CalibrationError: When the crosses lie in one line.
    """
    own = [reading for reading in readings if reading.axis is axis]
    middle_x_mm = sum(reading.cross.place.x_mm for reading in own) / len(own)
    middle_y_mm = sum(reading.cross.place.y_mm for reading in own) / len(own)
    rows = [
        (
            1.0,
            (reading.cross.place.x_mm - middle_x_mm) / _UNIT_MM,
            (reading.cross.place.y_mm - middle_y_mm) / _UNIT_MM,
        )
        for reading in own
    ]
    try:
        shift_mm, right_mm, down_mm = fit(rows, [reading.departure_mm for reading in own])
    except ValueError as error:
        raise CalibrationError(["the crosses lie in one line: measure one more"]) from error
    right, down = right_mm / _UNIT_MM, down_mm / _UNIT_MM
    return right, down, shift_mm - right * middle_x_mm - down * middle_y_mm


def _residuals(readings: Sequence[Reading], printer: Correction) -> Iterator[Residual]:
    measured = {(reading.cross, reading.axis): reading.measured_mm for reading in readings}
    for cross in dict.fromkeys(reading.cross for reading in readings):
        landed: Point = printer.moved(cross.place)
        yield Residual(
            cross,
            measured[cross, Axis.ACROSS] - landed.x_mm,
            measured[cross, Axis.DOWN] - landed.y_mm,
        )
