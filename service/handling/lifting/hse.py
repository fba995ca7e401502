"""The lifting and lowering filter of HSE INDG143 (2020): how many kg for hands at which place.

The figures are a first filter. They hold for a steady stance, a load that is easy to grip with both
hands, and up to about 30 lifts an hour; above them somebody has to look further, and below them
nothing is permitted.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum

from service.printed import to_print
from service.records.museum.lifting import FilterColumn

SOURCE = to_print("HSE INDG143 (2020), lifting and lowering filter")


class Zone(StrEnum):
    """How high the hands are; the words follow "hands"."""

    ABOVE_SHOULDER = to_print("above the shoulder")
    SHOULDER_TO_ELBOW = to_print("between shoulder and elbow")
    ELBOW_TO_KNUCKLE = to_print("at waist height")
    KNUCKLE_TO_SHIN = to_print("between knuckle and shin")
    BELOW_SHIN = to_print("near the floor")


class Reach(StrEnum):
    """How far from the body the hands are."""

    CLOSE = to_print("close to the body")
    ARMS_OUT = to_print("at arm's length")


@dataclass(frozen=True, slots=True)
class HandPlace:
    """Where the hands are at some moment of a lift."""

    zone: Zone
    reach: Reach


@dataclass(frozen=True, slots=True)
class _Cells:
    """The four figures of one zone, in kg."""

    higher_close_kg: float
    higher_out_kg: float
    lower_close_kg: float
    lower_out_kg: float


_FILTER: Mapping[Zone, _Cells] = {
    Zone.ABOVE_SHOULDER: _Cells(10, 5, 7, 3),
    Zone.SHOULDER_TO_ELBOW: _Cells(20, 10, 13, 7),
    Zone.ELBOW_TO_KNUCKLE: _Cells(25, 15, 16, 10),
    Zone.KNUCKLE_TO_SHIN: _Cells(20, 10, 13, 7),
    Zone.BELOW_SHIN: _Cells(10, 5, 7, 3),
}

# The filter draws a person and gives no heights. A boundary lies where the first of all people
# passes it, shoulder and elbow of a short woman (5th percentile), knuckle and half the lower leg of
# a tall man (95th): British adults in Pheasant, "Bodyspace"; from memory. The harsher zone begins
# at the boundary itself.
SHOULDER_MM = 1215.0
ELBOW_MM = 930.0
KNUCKLE_MM = 825.0
SHIN_MM = 300.0

_TWISTS = ((90.0, 0.8), (45.0, 0.9))
"""Above how many degrees of twist how much is left of a figure, the harshest first."""

_RATES = ((8.0, 0.2), (2.0, 0.5), (0.5, 0.7))
"""Above how many lifts a minute how much is left of a figure, the harshest first.

INDG143 takes off 30 % for one or two, 50 % for five to eight, 80 % for more than twelve, and says
nothing of what lies between: there the next harsher step is taken (common practice, no source).
"""


def find_zone(hand_height_mm: float) -> Zone:
    """Find the zone of a height above the floor that is right, or too harsh, for everyone."""
    if hand_height_mm >= SHOULDER_MM:
        return Zone.ABOVE_SHOULDER
    if hand_height_mm >= ELBOW_MM:
        return Zone.SHOULDER_TO_ELBOW
    if hand_height_mm > KNUCKLE_MM:
        return Zone.ELBOW_TO_KNUCKLE
    return Zone.KNUCKLE_TO_SHIN if hand_height_mm > SHIN_MM else Zone.BELOW_SHIN


def find_cell_kg(place: HandPlace, column: FilterColumn) -> float:
    """Give the figure of one cell."""
    cells = _FILTER[place.zone]
    if column is FilterColumn.HIGHER:
        return cells.higher_close_kg if place.reach is Reach.CLOSE else cells.higher_out_kg
    return cells.lower_close_kg if place.reach is Reach.CLOSE else cells.lower_out_kg


def find_limit_kg(
    places: Iterable[HandPlace], column: FilterColumn, *, share_ratio: float
) -> float:
    """Give the smallest figure of all places the hands pass, or a share of it.

    Raises:
        ValueError: When there are no places.
    """
    return min(find_cell_kg(place, column) for place in places) * share_ratio


def keep_ratio(*, twist_deg: float, lifts_per_min: float) -> float:
    """Say how much of a figure is left for people who twist or lift often.

    Both together are multiplied (common practice, no source).
    """
    twisting = next((kept for above, kept in _TWISTS if twist_deg > above), 1.0)
    often = next((kept for above, kept in _RATES if lifts_per_min > above), 1.0)
    return twisting * often
