"""The revised NIOSH lifting equation: the weight recommended for one person and one kind of lift.

*Applications Manual for the Revised NIOSH Lifting Equation*, DHHS (NIOSH) 94-110, 1994, revised
9/2021, in its metric form, in mm. It holds for lifting with both hands, standing, on a floor that
does not slip, at 19 to 26 degrees, and for nothing else. Constants are a value, since the manual's
worked examples are in inches and pounds, which are no exact conversion.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

from service.printed import to_print
from service.records.museum.lifting import Duration

SOURCE = to_print("NIOSH 94-110 (2021), revised lifting equation")


class Grip(StrEnum):
    """How well the hands hold the load."""

    GOOD = "good"
    FAIR = "fair"
    POOR = "poor"


@dataclass(frozen=True, slots=True)
class Constants:
    """The constants of the equation and its limits, in one system of measures (pp. 7 to 15)."""

    load_kg: float = 23.0
    reach_mm: float = 250.0
    most_reach_mm: float = 630.0
    neutral_mm: float = 750.0
    per_mm_ratio: float = 0.0003
    most_height_mm: float = 1750.0
    travel_mm: float = 45.0
    least_travel_mm: float = 250.0
    most_travel_mm: float = 1750.0


METRIC = Constants()
MOST_TWIST_DEG = 135.0


@dataclass(frozen=True, slots=True)
class Lift:
    """One end of a lift.

    Attributes:
        reach_mm: From between the ankles to between the hands (H).
        height_mm: Of the hands above the floor (V).
        travel_mm: From one end of the lift to the other, up or down (D).
        twist_deg: How far the load lies out of the middle of the body (A).
        lifts_per_min: How often one lifts (F), for a duration of the day.
        duration: How long.
        grip: How well the hands hold the load.
    """

    reach_mm: float
    height_mm: float
    travel_mm: float
    twist_deg: float
    lifts_per_min: float
    duration: Duration
    grip: Grip


@dataclass(frozen=True, slots=True)
class Multipliers:
    """What each circumstance leaves of the load constant: HM, VM, DM, AM, FM, CM."""

    reach_ratio: float
    height_ratio: float
    travel_ratio: float
    twist_ratio: float
    often_ratio: float
    grip_ratio: float

    @property
    def product(self) -> float:
        """All of them multiplied."""
        return (
            self.reach_ratio
            * self.height_ratio
            * self.travel_ratio
            * self.twist_ratio
            * self.often_ratio
            * self.grip_ratio
        )


# Table 5: lifts a minute, then up to one, two and eight hours, each with hands below knuckle height
# (75 cm) and from there up.
_TABLE_5 = (
    (0.2, 1.00, 1.00, 0.95, 0.95, 0.85, 0.85),
    (0.5, 0.97, 0.97, 0.92, 0.92, 0.81, 0.81),
    (1.0, 0.94, 0.94, 0.88, 0.88, 0.75, 0.75),
    (2.0, 0.91, 0.91, 0.84, 0.84, 0.65, 0.65),
    (3.0, 0.88, 0.88, 0.79, 0.79, 0.55, 0.55),
    (4.0, 0.84, 0.84, 0.72, 0.72, 0.45, 0.45),
    (5.0, 0.80, 0.80, 0.60, 0.60, 0.35, 0.35),
    (6.0, 0.75, 0.75, 0.50, 0.50, 0.27, 0.27),
    (7.0, 0.70, 0.70, 0.42, 0.42, 0.22, 0.22),
    (8.0, 0.60, 0.60, 0.35, 0.35, 0.18, 0.18),
    (9.0, 0.52, 0.52, 0.30, 0.30, 0.00, 0.15),
    (10.0, 0.45, 0.45, 0.26, 0.26, 0.00, 0.13),
    (11.0, 0.41, 0.41, 0.00, 0.23, 0.00, 0.00),
    (12.0, 0.37, 0.37, 0.00, 0.21, 0.00, 0.00),
    (13.0, 0.00, 0.34, 0.00, 0.00, 0.00, 0.00),
    (14.0, 0.00, 0.31, 0.00, 0.00, 0.00, 0.00),
    (15.0, 0.00, 0.28, 0.00, 0.00, 0.00, 0.00),
)

# Table 7: what a grip leaves with hands below knuckle height, and from there up.
_TABLE_7: Mapping[Grip, tuple[float, float]] = {
    Grip.GOOD: (1.00, 1.00),
    Grip.FAIR: (0.95, 1.00),
    Grip.POOR: (0.90, 0.90),
}


def find_multipliers(lift: Lift, constants: Constants = METRIC) -> Multipliers:
    """Give the six multipliers of one end of a lift."""
    return Multipliers(
        reach_ratio=_weigh_reach(lift.reach_mm, constants),
        height_ratio=_weigh_height(lift.height_mm, constants),
        travel_ratio=_weigh_travel(lift.travel_mm, constants),
        twist_ratio=1 - 0.0032 * lift.twist_deg if lift.twist_deg <= MOST_TWIST_DEG else 0.0,
        often_ratio=weigh_rate(
            lift.lifts_per_min, lift.duration, high=lift.height_mm >= constants.neutral_mm
        ),
        grip_ratio=_TABLE_7[lift.grip][lift.height_mm >= constants.neutral_mm],
    )


def recommend_kg(lift: Lift, constants: Constants = METRIC) -> float:
    """Give the recommended weight limit (RWL) of one end of a lift."""
    return constants.load_kg * find_multipliers(lift, constants).product


def find_index(weight_kg: float, recommended_kg: float) -> float:
    """Give the lifting index (LI): how many times the recommended weight a load has."""
    return weight_kg / recommended_kg if recommended_kg else math.inf


def estimate_reach_mm(depth_mm: float, height_mm: float) -> float:
    """Estimate how far the hands are from the ankles by how deep the load is (p. 8)."""
    return (200.0 if height_mm >= METRIC.reach_mm else 250.0) + depth_mm / 2


def weigh_rate(lifts_per_min: float, duration: Duration, *, high: bool) -> float:
    """Give the frequency multiplier of table 5, between its rows by linear interpolation (p. 7).

    Between a row and one that has nothing left nothing is left (common practice, no source).
    """
    column = 1 + 2 * list(Duration).index(duration) + int(high)
    rows = [(row[0], row[column]) for row in _TABLE_5]
    if lifts_per_min <= rows[0][0]:
        return rows[0][1]
    for (low, above), (up, below) in pairwise(rows):
        if lifts_per_min == up or (lifts_per_min < up and not below):
            return below
        if lifts_per_min < up:
            return above + (below - above) * (lifts_per_min - low) / (up - low)
    return 0.0


def _weigh_reach(reach_mm: float, constants: Constants) -> float:
    if reach_mm > constants.most_reach_mm:
        return 0.0
    return constants.reach_mm / max(constants.reach_mm, reach_mm)


def _weigh_height(height_mm: float, constants: Constants) -> float:
    if not 0 <= height_mm <= constants.most_height_mm:
        return 0.0
    return 1 - constants.per_mm_ratio * abs(height_mm - constants.neutral_mm)


def _weigh_travel(travel_mm: float, constants: Constants) -> float:
    if travel_mm > constants.most_travel_mm:
        return 0.0
    return 0.82 + constants.travel_mm / max(constants.least_travel_mm, travel_mm)
