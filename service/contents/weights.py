"""The weight of a container, with its honesty: measured, at least, or unknown."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from service.contents.packing import Packing


class Certainty(StrEnum):
    """What a weight stands for."""

    MEASURED = "measured"
    """The container was weighed as it is."""
    SUM = "sum"
    """Container and every object in it have a known weight."""
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
        return ContainerWeight(gross.weight_g, Certainty.MEASURED, 0, len(things), tare_known=True)
    known = [item.record.weight.weight_g for item in packing.contents if item.record.weight]
    inner = [weigh_packing(nested) for nested in packing.nested]
    unweighed = len(packing.contents) - len(known) + sum(weight.unweighed for weight in inner)
    tare_known = tare is not None and all(weight.tare_known for weight in inner)
    total_g = sum(known) + sum(weight.weight_g for weight in inner) + (tare.weight_g if tare else 0)
    certainty = _judge(total_g, unweighed=unweighed, tare_known=tare_known)
    return ContainerWeight(total_g, certainty, unweighed, len(things), tare_known)


def _judge(total_g: float, *, unweighed: int, tare_known: bool) -> Certainty:
    if total_g <= 0:
        return Certainty.UNKNOWN
    return Certainty.SUM if unweighed == 0 and tare_known else Certainty.AT_LEAST
