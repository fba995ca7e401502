"""Weights as cards write them."""

from __future__ import annotations

import math

from service.contents.weights import ContainerWeight
from service.printed import to_print
from service.units import kg_from_grams

_WHOLE_FROM_KG = 20.0
_TWO_DIGITS_BELOW_KG = 0.1


def format_kg(mass_g: float) -> str:
    """Write grams as kilograms: one decimal from 0.1 to 20 kg, two digits below."""
    mass_kg = kg_from_grams(mass_g)
    return f"{mass_kg:.0f}" if mass_kg >= _WHOLE_FROM_KG else _write_exactly(mass_kg)


def floor_kg(limit_kg: float) -> float:
    """Round a figure that is not to be passed down to a tenth of a kilogram, as it is printed."""
    # Six places take away what binary fractions leave behind: 7 kg less 10 % are 6.3 kg.
    return math.floor(round(limit_kg * 10, 6)) / 10


def compare_kg(mass_g: float, limit_kg: float) -> str:
    """Say whether a weight lies over or within a figure: "16.4 kg: over 13 kg"."""
    mass_kg = kg_from_grams(mass_g)
    figure = _write_exactly(mass_kg)
    if not limit_kg:
        return to_print("{figure} kg: no weight is recommended", figure=figure)
    over = to_print("over") if float(figure) > limit_kg else to_print("just over")
    return to_print(
        "{figure} kg: {compared} {limit_kg:g} kg",
        figure=figure,
        compared=over if mass_kg > limit_kg else to_print("within"),
        limit_kg=limit_kg,
    )


def explain_gap(weight: ContainerWeight) -> str:
    """Say what of a container was not weighed."""
    things = to_print(
        "{unweighed} of {things} not weighed", unweighed=weight.unweighed, things=weight.things
    )
    container = to_print("container not weighed")
    if weight.unweighed and not weight.tare_known:
        return to_print("at least: {things}, {container}", things=things, container=container)
    return to_print("at least: {missing}", missing=things if weight.unweighed else container)


def _write_exactly(mass_kg: float) -> str:
    return f"{mass_kg:.2g}" if 0 < mass_kg < _TWO_DIGITS_BELOW_KG else f"{mass_kg:.1f}"
