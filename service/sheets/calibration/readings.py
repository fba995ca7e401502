"""What a person measured on a ruler sheet, as typed: `A=15.25,14.75`."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum

from service.errors import CalibrationError
from service.sentence import Sentence
from service.sheets.calibration.ruler_sheet import Cross

LEAST_CROSSES = 4
FAR_MM = 30.0
"""A measure further than this from where the cross should be is a slip, whatever the printer."""

# A comma stands for the point of a decimal only where it cannot part the two measures.
_TYPED = re.compile(
    r"\s*(?P<cross>\w+)\s*=\s*(?:"
    r"(?P<across>\d{1,3}(?:\.\d{1,3})?)\s*,\s*(?P<down>\d{1,3}(?:\.\d{1,3})?)"
    r"|(?P<across2>\d{1,3}(?:[.,]\d{1,3})?)\s*[/;]\s*(?P<down2>\d{1,3}(?:[.,]\d{1,3})?)"
    r")\s*",
    re.ASCII,
)


class Axis(StrEnum):
    """Which way was measured."""

    ACROSS = "across"
    """From the left edge of the paper."""
    DOWN = "down"
    """From the top edge of the paper."""


@dataclass(frozen=True, slots=True)
class Reading:
    """One measure of one cross."""

    cross: Cross
    axis: Axis
    measured_mm: float

    @property
    def wanted_mm(self) -> float:
        """What a printer without fault would give."""
        place = self.cross.place
        return place.x_mm if self.axis is Axis.ACROSS else place.y_mm

    @property
    def departure_mm(self) -> float:
        """How far the ink landed to the right or too low."""
        return self.measured_mm - self.wanted_mm

    def doubted(self, expected_mm: float) -> str:
        """Say that the measure cannot be right, and what it should be."""
        return (
            f"cross {self.cross.name}: {self.axis}: measured {self.measured_mm:g} mm,"
            f" expected about {expected_mm:.1f} mm: measure it again"
        )


def read_measurements(typed: Sequence[str], crosses: Sequence[Cross]) -> tuple[Reading, ...]:
    """Read what was typed, two readings a cross: `A=15.25,14.75` is first across and then down.

    With a decimal comma the two are parted by a stroke: `A=15,25/14,75`.

    Raises:
        CalibrationError: When a text is no measurement, a cross is unknown or there twice, fewer
            than four crosses were measured, or a measure is far from anything possible.
    """
    known = {cross.name: cross for cross in crosses}
    faults: list[str] = []
    readings: list[Reading] = []
    for text in typed:
        match = _TYPED.fullmatch(text)
        if match is None:
            faults.append(f"{text[:40]!r} cannot be read; write for instance A=15.25,14.75")
        elif match["cross"].upper() not in known:
            faults.append(f"there is no cross {match['cross'][:40]}, only {', '.join(known)}")
        else:
            readings.extend(_readings(known[match["cross"].upper()], match))
    faults.extend(_list_faults(readings))
    if faults:
        raise CalibrationError(faults)
    return tuple(readings)


def _readings(cross: Cross, match: re.Match[str]) -> Iterator[Reading]:
    yield Reading(cross, Axis.ACROSS, _number(match["across"] or match["across2"]))
    yield Reading(cross, Axis.DOWN, _number(match["down"] or match["down2"]))


def _number(text: str) -> float:
    return float(text.replace(",", "."))


def _list_faults(readings: Sequence[Reading]) -> Iterator[str]:
    counted = Counter(reading.cross.name for reading in readings)
    for name, count in counted.items():
        if count > len(Axis):
            yield Sentence("cross {name} is there twice", name=name)
    for reading in readings:
        if abs(reading.departure_mm) > FAR_MM:
            yield reading.doubted(reading.wanted_mm)
    if len(counted) < LEAST_CROSSES:
        yield Sentence(
            "{counted} crosses were measured; at least {least_crosses} are needed",
            counted=len(counted),
            least_crosses=LEAST_CROSSES,
        )
