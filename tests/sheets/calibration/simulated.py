"""Printers that do not exist, and people who read rulers."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence

from service.sheets.calibration.readings import Axis, Reading
from service.sheets.calibration.ruler_sheet import Cross
from service.sheets.correction import Correction

QUARTER_MM = 0.25


def any_printer(rng: random.Random) -> Correction:
    """Make a printer that is off by millimetres, tenths of per cent and tenths of degrees."""
    level = math.radians(rng.uniform(-0.5, 0.5))
    upright = level + math.radians(rng.uniform(-0.15, 0.15))
    across = 1 + rng.uniform(-0.008, 0.008)
    down = across + rng.uniform(-0.004, 0.004)
    return Correction(
        across * math.cos(level),
        -down * math.sin(upright),
        across * math.sin(level),
        down * math.cos(upright),
        rng.uniform(-3, 3),
        rng.uniform(-3, 3),
    )


def measure(
    printer: Correction, crosses: Sequence[Cross], rng: random.Random, *, noise_mm: float = 0.08
) -> list[Reading]:
    """Read each printed cross from a ruler, with a shaky hand, to a quarter of a millimetre."""
    readings = []
    for cross in crosses:
        landed = printer.moved(cross.place)
        for axis, at_mm in ((Axis.ACROSS, landed.x_mm), (Axis.DOWN, landed.y_mm)):
            shaky_mm = at_mm + rng.gauss(0, noise_mm)
            readings.append(Reading(cross, axis, round(shaky_mm / QUARTER_MM) * QUARTER_MM))
    return readings
