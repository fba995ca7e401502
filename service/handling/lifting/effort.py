"""How much a lift asks, from one person to a lifting aid, and the words for it."""

from __future__ import annotations

from collections.abc import Mapping
from enum import IntEnum

from service.handling.lifting.team import team_limit_kg
from service.printed import to_print
from service.records.museum.lifting import LiftingChoices, Tiers


class Effort(IntEnum):
    """What a lift asks, least first; up to `WAIST` it is one person's."""

    KEEP_CLOSE = 0
    NOT_HIGH = 1
    WAIST = 2
    TWO_PEOPLE = 3
    THREE_PEOPLE = 4
    AID = 5


ADVICE: Mapping[Effort, str] = {
    Effort.KEEP_CLOSE: to_print("Keep close to the body."),
    Effort.NOT_HIGH: to_print("Not above the shoulder at arm's length."),
    Effort.WAIST: to_print("At waist height, close to the body."),
    Effort.TWO_PEOPLE: to_print("Two people or a trolley."),
    Effort.THREE_PEOPLE: to_print("Three people or a trolley."),
    Effort.AID: to_print("Trolley or lifting aid; assess before lifting."),
}


def find_tier(mass_kg: float, tiers: Tiers) -> Effort:
    """Find what a weight asks wherever its container stands."""
    begins = (
        (tiers.aid_kg, Effort.AID),
        (tiers.two_people_kg, Effort.TWO_PEOPLE),
        (tiers.waist_kg, Effort.WAIST),
        (tiers.not_high_kg, Effort.NOT_HIGH),
    )
    return next((effort for above_kg, effort in begins if mass_kg > above_kg), Effort.KEEP_CLOSE)


def find_team(mass_kg: float, each_kg: float) -> Effort:
    """Find how many people a weight asks of whom each could lift so much alone."""
    if mass_kg <= each_kg:
        return Effort.KEEP_CLOSE
    if mass_kg <= team_limit_kg((each_kg,) * 2):
        return Effort.TWO_PEOPLE
    return Effort.THREE_PEOPLE if mass_kg <= team_limit_kg((each_kg,) * 3) else Effort.AID


def find_own(mass_kg: float, choices: LiftingChoices) -> tuple[Effort, float]:
    """Find what the museum's own figures ask, and the figure that a weight is over."""
    own = ((choices.aid_above_kg, Effort.AID), (choices.two_people_above_kg, Effort.TWO_PEOPLE))
    over = ((effort, kg) for kg, effort in own if kg is not None and mass_kg > kg)
    return next(over, (Effort.KEEP_CLOSE, 0.0))


def word_effort(effort: Effort, *, least: Effort) -> str:
    """Word what a lift asks; for one person with how to carry it, which `least` says."""
    if effort >= Effort.TWO_PEOPLE:
        return ADVICE[effort]
    carry = ADVICE[min(least, Effort.WAIST)]
    carried = carry[:1].lower() + carry[1:]
    return to_print("One person: {carry}", carry=carried)
