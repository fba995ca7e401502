"""The weight of a container, with its honesty: measured, at least, or unknown."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
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

    A nested container counts with its own gross weight where it has one. An object counts once,
    however many places its parts lie in, and whole, wherever the others are.
    """
    container = packing.container
    things = len({item.record.object_number for item in packing.everything})
    if container.gross is not None:
        basis = container.gross.basis
        certainty = Certainty.ESTIMATED if basis is WeightBasis.ESTIMATED else Certainty.MEASURED
        return ContainerWeight(container.gross.weight_g, certainty, 0, things, tare_known=True)
    inner = list(_inside(packing))
    weighed = [one.container.gross for one in inner if one.container.gross is not None]
    summed = [packing, *(one for one in inner if one.container.gross is None)]
    tares = [one.container.tare for one in summed]
    loose = {item.record.object_number: item.record for one in summed for item in one.contents}
    weights = [record.weight for record in loose.values()]
    parts = [part for part in (*weights, *tares, *weighed) if part is not None]
    total_g = sum(part.weight_g for part in parts)
    unweighed = weights.count(None)
    tare_known = None not in tares
    if total_g <= 0:
        certainty = Certainty.UNKNOWN
    elif unweighed or not tare_known:
        certainty = Certainty.AT_LEAST
    else:
        certainty = Certainty.ESTIMATED if _is_estimated(parts) else Certainty.SUM
    return ContainerWeight(total_g, certainty, unweighed, things, tare_known)


def _inside(packing: Packing) -> Iterator[Packing]:
    """Give the containers inside, whatever is in one that was weighed left out."""
    for one in packing.nested:
        yield one
        if one.container.gross is None:
            yield from _inside(one)


def _is_estimated(weights: Iterable[Weight]) -> bool:
    return any(weight.basis is WeightBasis.ESTIMATED for weight in weights)
