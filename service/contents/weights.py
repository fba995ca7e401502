"""The weight of a container, with its honesty: measured, at least, or unknown."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from service.contents.packing import Packing
from service.records.record import Weight, WeightBasis


class Certainty(StrEnum):
    """What a weight stands for."""

    MEASURED = "measured"
    """The container was weighed as it is."""
    SUM = "sum"
    """Container and every object in it have a known weight."""
    ESTIMATED = "estimated"
    """Some figure in it is an estimate."""
    AT_LEAST = "at least"
    """Something in it, or the container itself, has never been weighed."""
    UNKNOWN = "unknown"
    """Nothing is known."""


@dataclass(frozen=True, slots=True)
class ContainerWeight:
    """A weight in grams (0 where unknown) and how many of its things were never weighed.

    `unweighed` and `things` count objects; `tare_known` tells of the empty container.
    """

    weight_g: float
    certainty: Certainty
    unweighed: int
    things: int
    tare_known: bool


def weigh_packing(packing: Packing) -> ContainerWeight:
    """Add up what is known; a measured gross weight wins over any sum.

    A nested container counts with its own gross weight where it has one.
    """
    gross = packing.container.gross
    things = packing.everything
    tare = packing.container.tare
    if gross is not None:
        certainty = _state([gross])
        return ContainerWeight(gross.weight_g, certainty, 0, len(things), tare_known=True)
    known = [item.record.weight for item in packing.contents if item.record.weight]
    inner = [weigh_packing(nested) for nested in packing.nested]
    unweighed = len(packing.contents) - len(known) + sum(weight.unweighed for weight in inner)
    tare_known = tare is not None and all(weight.tare_known for weight in inner)
    parts = [*known, *([tare] if tare else [])]
    total_g = sum(part.weight_g for part in parts) + sum(weight.weight_g for weight in inner)
    estimated = _state(parts) is Certainty.ESTIMATED or any(
        weight.certainty is Certainty.ESTIMATED for weight in inner
    )
    if total_g <= 0:
        certainty = Certainty.UNKNOWN
    elif unweighed or not tare_known:
        certainty = Certainty.AT_LEAST
    else:
        certainty = Certainty.ESTIMATED if estimated else Certainty.SUM
    return ContainerWeight(total_g, certainty, unweighed, len(things), tare_known)


def _state(weights: Iterable[Weight]) -> Certainty:
    estimated = any(weight.basis is WeightBasis.ESTIMATED for weight in weights)
    return Certainty.ESTIMATED if estimated else Certainty.MEASURED
