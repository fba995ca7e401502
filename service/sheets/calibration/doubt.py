"""Which measure is wrong, where the measures contradict each other.

All measures are fitted together, with the little that is known of any printer beside them: it
stretches both ways alike and keeps right angles, nearly. Each measure is then held against what the
others say. With eight crosses that alone would find the wrong one; with four it is what is known of
printers that tells (weighted least squares and deletion residuals: Draper and Smith, Applied
Regression Analysis; from memory).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from service.sheets.calibration.least_squares import Row, fit, leverages, times
from service.sheets.calibration.readings import Axis, Reading

READING_MM = 0.25
"""How exactly a person reads an ordinary ruler: common practice, no source."""
MOST_STRAIN_RATIO = 3.0
"""A measure that is off by more than three times what is usual is wrong."""

_UNIT_MM = 100.0
_MIDDLE = (100.0, 150.0)
# How far printers differ from a plain shift, in mm on 100 mm; ours, wide enough for odd ones.
_UNEQUAL_STRETCH_MM = 0.5
_SKEW_MM = 0.35
_STRETCH_MM = 2.0
_TURN_MM = 2.0
_ALIKE = 6.0
"""Two measures whose squared strains differ by less could each be the wrong one."""
_MOST_WRONG = 3
_LEAST_KEPT = 7
"""Six measures fix the six unknowns and contradict nothing."""


@dataclass(frozen=True, slots=True)
class Doubt:
    """A measure that does not agree: how many times too far off, and what the others say."""

    reading: Reading
    strain_ratio: float
    expected_mm: float


def find_doubts(readings: Sequence[Reading]) -> tuple[tuple[Doubt, ...], ...]:
    """Give the wrong measures, worst first, until the rest agree; each with those as likely wrong.

    An empty group at the end says that the rest do not agree either, and no one is to blame.
    """
    found: list[tuple[Doubt, ...]] = []
    kept = list(readings)
    while worst := _worst(kept):
        if len(found) == _MOST_WRONG or len(kept) <= _LEAST_KEPT:
            return (*found, ())
        found.append(worst)
        kept.remove(worst[0].reading)
    return tuple(found)


def _worst(readings: Sequence[Reading]) -> tuple[Doubt, ...]:
    """Give the measure that agrees least, first, and those that may be wrong instead of it."""
    doubts = sorted(_held_against_the_others(readings), key=lambda doubt: -doubt.strain_ratio)
    if doubts[0].strain_ratio <= MOST_STRAIN_RATIO:
        return ()
    least = doubts[0].strain_ratio ** 2 - _ALIKE
    return tuple(doubt for doubt in doubts if doubt.strain_ratio**2 >= least)


def _held_against_the_others(readings: Sequence[Reading]) -> Iterator[Doubt]:
    rows = [*(_row(reading) for reading in readings), *_known_of_printers()]
    values = [reading.departure_mm / READING_MM for reading in readings]
    values += [0.0] * (len(rows) - len(values))
    unknowns = fit(rows, values)
    for reading, row, value, leverage in zip(readings, rows, values, leverages(rows), strict=False):
        free = max(1.0 - leverage, 1e-6)
        left_over = value - times(row, unknowns)
        expected_mm = reading.measured_mm - left_over / free * READING_MM
        yield Doubt(reading, abs(left_over) / free**0.5, expected_mm)


def _row(reading: Reading) -> Row:
    """Write a measure as an equation for shift, stretch and turn across, and the same down."""
    place = reading.cross.place
    along = [
        1.0 / READING_MM,
        (place.x_mm - _MIDDLE[0]) / _UNIT_MM / READING_MM,
        (place.y_mm - _MIDDLE[1]) / _UNIT_MM / READING_MM,
    ]
    none = [0.0] * len(along)
    return along + none if reading.axis is Axis.ACROSS else none + along


def _known_of_printers() -> tuple[Row, ...]:
    """Write what is known as equations: alike both ways, square, hardly stretched or turned."""
    alike, square = 1 / _UNEQUAL_STRETCH_MM, 1 / _SKEW_MM
    return (
        (0.0, alike, 0.0, 0.0, 0.0, -alike),
        (0.0, 0.0, square, 0.0, square, 0.0),
        (0.0, 1 / _STRETCH_MM, 0.0, 0.0, 0.0, 0.0),
        (0.0, 0.0, 1 / _TURN_MM, 0.0, 0.0, 0.0),
    )
