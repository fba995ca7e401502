"""What one person lifts from the place where a container stands, by the museum's method."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from service.handling.lifting import hse, niosh
from service.handling.lifting.hold import deepest_mm, find_grip, find_reach
from service.handling.lifting.hse import HandPlace
from service.handling.lifting.niosh import Lift
from service.handling.lifting.written import compare_kg, floor_kg
from service.printed import to_print
from service.records.museum.lifting import LiftingChoices, LiftMethod
from service.records.record import ContainerRecord
from service.units import kg_from_grams


@dataclass(frozen=True, slots=True)
class PlaceLimit:
    """The figure for one person, what it is for, and its source."""

    limit_kg: float
    words: str
    source: str

    def explain(self, mass_g: float) -> str:
        """Say how a weight compares with the figure: "16.4 kg: over 13 kg for hands ..."."""
        compared = f"{compare_kg(mass_g, self.limit_kg)} {self.words}"
        if self.source != niosh.SOURCE or not self.limit_kg:
            return compared
        index = niosh.find_index(kg_from_grams(mass_g), self.limit_kg)
        # Rounded up, so that 1.0 never stands beside a weight over its figure.
        return to_print(
            "{compared}, lifting index {index:.1f}",
            compared=compared,
            index=math.ceil(round(index * 10, 6)) / 10,
        )


def share_left(choices: LiftingChoices) -> float:
    """Say how much of the filter's figures is left for how the museum's people lift."""
    return hse.keep_ratio(twist_deg=choices.twist_deg, lifts_per_min=choices.lifts_per_min)


def find_place_limit(
    container: ContainerRecord, hand_height_mm: float, choices: LiftingChoices
) -> PlaceLimit:
    """Find the figure for taking a container from its shelf or rail to waist height."""
    if choices.method is LiftMethod.NIOSH:
        return _recommend(container, hand_height_mm, choices)
    share_ratio = share_left(choices)
    place = HandPlace(hse.find_zone(hand_height_mm), find_reach(container))
    # At waist height, where it is taken, the figures are the highest of all: the shelf decides.
    limit_kg = hse.find_limit_kg((place,), choices.column, share_ratio=share_ratio)
    words = to_print("for hands {zone}, {reach}", zone=place.zone, reach=place.reach)
    if share_ratio < 1:
        words += to_print(
            ", {off:.0f} % already off for twisting or lifting often",
            off=100 * (1 - share_ratio),
        )
    return PlaceLimit(floor_kg(limit_kg), words, hse.SOURCE)


def _recommend(
    container: ContainerRecord, hand_height_mm: float, choices: LiftingChoices
) -> PlaceLimit:
    """Solve the equation at both ends of the lift; the lower figure counts (pp. 21 and 26)."""
    waist_mm = niosh.METRIC.neutral_mm
    reach_mm = niosh.estimate_reach_mm(deepest_mm(container), hand_height_mm)
    shelf = Lift(
        reach_mm=reach_mm,
        height_mm=hand_height_mm,
        travel_mm=abs(hand_height_mm - waist_mm),
        twist_deg=choices.twist_deg,
        lifts_per_min=choices.lifts_per_min,
        duration=choices.duration,
        grip=find_grip(container),
    )
    limit_kg = min(
        niosh.recommend_kg(shelf), niosh.recommend_kg(replace(shelf, height_mm=waist_mm))
    )
    words = to_print(
        "for hands {hand_height_mm:.0f} mm up and {reach_mm:.0f} mm out",
        hand_height_mm=hand_height_mm,
        reach_mm=reach_mm,
    )
    return PlaceLimit(floor_kg(limit_kg), words, niosh.SOURCE)
