"""What a card says about lifting a container: its weight, advice, and the reason for it.

Where the height of shelf or rail is known, the advice follows from it by the museum's method, and
says why; else it follows from the weight alone. It is a first filter and no permission. A weight
that is unknown, estimated or only partly known gives no tier at all.
"""

from __future__ import annotations

from dataclasses import dataclass

from service.contents.weights import Certainty, ContainerWeight
from service.handling.lifting import hse
from service.handling.lifting.effort import (
    ADVICE,
    Effort,
    find_own,
    find_team,
    find_tier,
    word_effort,
)
from service.handling.lifting.place import find_place_limit, share_left
from service.handling.lifting.written import compare_kg, explain_gap, format_kg
from service.printed import to_print
from service.records.museum.lifting import LiftingChoices
from service.records.record import ContainerRecord
from service.units import kg_from_grams

WEIGH_FIRST = to_print("Weigh before lifting.")


@dataclass(frozen=True, slots=True)
class LiftAdvice:
    """A figure to print ("7.4", "" when unknown), its qualifier and advice with its source.

    `reason` says why the advice is given; it is empty where the weight alone decides.
    """

    figure_kg: str
    qualifier: str
    advice: str
    source: str = hse.SOURCE
    reason: str = ""


NO_ADVICE = LiftAdvice("", "", "", "")
"""What says nothing about lifting."""

LIGHT_ADVICE = ADVICE[Effort.KEEP_CLOSE]
"""The advice for what is known to be light."""


def advise_lift(
    weight: ContainerWeight, container: ContainerRecord, choices: LiftingChoices
) -> LiftAdvice:
    """Turn a container's weight and place into what its card says about lifting."""
    if weight.certainty is Certainty.UNKNOWN:
        return LiftAdvice("", to_print("Weight not known"), WEIGH_FIRST)
    figure = format_kg(weight.weight_g)
    if weight.certainty is Certainty.AT_LEAST:
        return LiftAdvice(figure, explain_gap(weight), WEIGH_FIRST)
    if weight.certainty is Certainty.ESTIMATED:
        return LiftAdvice(figure, to_print("estimated"), WEIGH_FIRST)
    basis = (
        to_print("weighed")
        if weight.certainty is Certainty.MEASURED
        else to_print("sum of the records")
    )
    mass_kg = kg_from_grams(weight.weight_g)
    tier = find_tier(mass_kg, choices.tiers(share_ratio=share_left(choices)))
    if container.hand_height_mm is None:
        return LiftAdvice(figure, basis, ADVICE[tier])
    place = find_place_limit(container, container.hand_height_mm, choices)
    at_place = find_team(mass_kg, place.limit_kg)
    own, own_kg = find_own(mass_kg, choices)
    advice = word_effort(max(at_place, own), least=tier)
    reason = place.explain(weight.weight_g)
    if own > at_place:
        reason = to_print(
            "{compared}, the museum's own figure", compared=compare_kg(weight.weight_g, own_kg)
        )
    return LiftAdvice(figure, basis, advice, place.source, reason)
