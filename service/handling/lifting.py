"""What the weight of a container asks of the person who lifts it.

The tiers come from the lifting and lowering filter of HSE INDG143 (2020): 3 kg, 7 kg and 16 kg are
its lower figures (the smallest cell, the smallest close to the body, the largest), so that the
advice fits everyone; 25 kg is the largest cell of all. The filter says when to assess further; it
is no permission. A weight that is unknown, estimated or only partly known gives no tier at all.
"""

from __future__ import annotations

from dataclasses import dataclass

from service.contents.weights import Certainty, ContainerWeight
from service.units import kg_from_grams

SOURCE = "HSE INDG143 (2020), lifting and lowering filter"


@dataclass(frozen=True, slots=True)
class LiftAdvice:
    """A figure to print ("7.4", "" when unknown), its qualifier and advice with its reason."""

    figure_kg: str
    qualifier: str
    advice: str
    source: str = SOURCE


NO_ADVICE = LiftAdvice("", "", "", "")
"""What says nothing about lifting."""

LIGHT_ADVICE = "Keep close to the body."
"""The advice of the lowest tier."""

_TIERS: tuple[tuple[float, str], ...] = (
    (25.0, "Trolley or lifting aid; assess before lifting."),
    (16.0, "Two people or a trolley."),
    (7.0, "At waist height, close to the body."),
    (3.0, "Not above the shoulder at arm's length."),
    (0.0, LIGHT_ADVICE),
)
"""Above how many kg each advice begins, heaviest first."""


def advise_lift(weight: ContainerWeight) -> LiftAdvice:
    """Turn a container's weight into what its card says about lifting."""
    if weight.certainty is Certainty.UNKNOWN:
        return LiftAdvice("", "Weight not known", "Weigh before lifting.")
    figure = format_kg(weight.weight_g)
    if weight.certainty is Certainty.AT_LEAST:
        return LiftAdvice(figure, _explain_gap(weight), "Weigh before lifting.")
    if weight.certainty is Certainty.ESTIMATED:
        return LiftAdvice(figure, "estimated", "Weigh before lifting.")
    mass_kg = kg_from_grams(weight.weight_g)
    advice = next(words for above_kg, words in _TIERS if mass_kg > above_kg)
    measured = weight.certainty is Certainty.MEASURED
    return LiftAdvice(figure, "weighed" if measured else "sum of the records", advice)


def format_kg(mass_g: float) -> str:
    """Write grams as kilograms: one decimal from 0.1 to 20 kg, two digits below."""
    mass_kg = kg_from_grams(mass_g)
    if 0 < mass_kg < 0.1:  # noqa: PLR2004 - one decimal would round this to nothing
        return f"{mass_kg:.2g}"
    return f"{mass_kg:.1f}" if mass_kg < 20 else f"{mass_kg:.0f}"  # noqa: PLR2004 - as documented


def _explain_gap(weight: ContainerWeight) -> str:
    missing = []
    if weight.unweighed:
        missing.append(f"{weight.unweighed} of {weight.things} not weighed")
    if not weight.tare_known:
        missing.append("container not weighed")
    return "at least: " + ", ".join(missing)
