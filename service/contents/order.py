"""Puts the places of a packing into another order, or into other layers."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace
from enum import StrEnum

from service.contents.places import Places
from service.records.record import PlaceRecord


class Step(StrEnum):
    """A step that a place takes in a list: within its layer, or into the layer above or below."""

    UP = "up"
    DOWN = "down"
    LAYER_UP = "layer-up"
    LAYER_DOWN = "layer-down"


def step_place(places: Places, place: PlaceRecord, step: Step) -> Places:
    """Give the places with one of them a step further; where there is no further, as they are.

    Places of one compartment keep the order of the list, so only among those is there an up and a
    down. The lowest layer is left for a new one below unless the place lies there alone.
    """
    at = places.index(place)
    if step in (Step.LAYER_UP, Step.LAYER_DOWN):
        layer = place.layer + (1 if step is Step.LAYER_DOWN else -1)
        lowest = max(one.layer for one in places)
        alone = sum(one.layer == place.layer for one in places) == 1
        if layer < 1 or (layer > lowest and alone):
            return places
        return (*places[:at], replace(place, layer=layer), *places[at + 1 :])
    beside = [i for i, one in enumerate(places) if _spot(one) == _spot(place)]
    other = beside.index(at) + (1 if step is Step.DOWN else -1)
    if not 0 <= other < len(beside):
        return places
    swapped = list(places)
    swapped[at], swapped[beside[other]] = places[beside[other]], place
    return tuple(swapped)


def order_places(places: Places, wanted: Sequence[tuple[PlaceRecord, int]]) -> Places:
    """Give the places in the order wanted, each in the layer wanted; the others stay.

    What is wanted and does not lie there is left out.
    """
    spots: dict[PlaceRecord, list[int]] = defaultdict(list)
    for at, place in enumerate(places):
        spots[place].append(at)
    ordered = {
        spots[place].pop(0): replace(place, layer=max(1, layer))
        for place, layer in wanted
        if spots[place]
    }
    turns = dict(zip(sorted(ordered), ordered.values(), strict=True))
    return tuple(turns.get(at, place) for at, place in enumerate(places))


def find_sharing(places: Places, wanted: PlaceRecord) -> PlaceRecord | None:
    """Find where the same object, or one of the same parts of it, lies already."""
    for place in places:
        is_same = place.object_number == wanted.object_number
        if is_same and (not place.parts or not wanted.parts or {*place.parts} & {*wanted.parts}):
            return place
    return None


def _spot(place: PlaceRecord) -> tuple[int, str]:
    return place.layer, place.compartment
