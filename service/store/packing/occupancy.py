"""The rule that an object, or a named part of it, lies in one container only."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from service.records.record import PlaceRecord

Places = tuple[PlaceRecord, ...]


@dataclass(frozen=True, slots=True)
class Clash:
    """An object that would lie in `container_number` and lies in `lies_in` already."""

    object_number: str
    container_number: str
    lies_in: str


def find_clashes(lying: Mapping[str, Places], coming: Mapping[str, Places]) -> tuple[Clash, ...]:
    """Find what of `coming` lies in another container: in one of `lying`, or one named before."""
    spots: dict[str, list[tuple[str, PlaceRecord]]] = {}
    _add_spots(spots, lying)
    clashes: list[Clash] = []
    for number, places in coming.items():
        found = tuple(_clashes_of(number, places, spots))
        clashes += found
        # What cannot come in stands in nobody's way.
        if not found:
            _add_spots(spots, {number: places})
    return tuple(clashes)


def settle(current: Mapping[str, Places], wanted: Mapping[str, Places]) -> tuple[Clash, ...]:
    """Choose which containers get the places wanted, so that nothing lies in two of them.

    A container that is refused keeps what it holds now, which may stand in the way of another: so
    the rest is looked at again. Gives a clash for each container that is refused.
    """
    refused: dict[str, Clash] = {}
    while True:
        coming = {name: places for name, places in wanted.items() if name not in refused}
        lying = {name: places for name, places in current.items() if name not in coming}
        clashes = find_clashes(lying, coming)
        if not clashes:
            return tuple(refused.values())
        for clash in clashes:
            refused.setdefault(clash.container_number, clash)


def _clashes_of(
    number: str, places: Places, spots: Mapping[str, list[tuple[str, PlaceRecord]]]
) -> Iterable[Clash]:
    for place in places:
        for other, there in spots.get(place.object_number, ()):
            if other != number and _overlap(there.parts, place.parts):
                yield Clash(place.object_number, number, other)


def _add_spots(
    spots: dict[str, list[tuple[str, PlaceRecord]]], lying: Mapping[str, Places]
) -> None:
    for number, places in lying.items():
        for place in places:
            spots.setdefault(place.object_number, []).append((number, place))


def _overlap(first: tuple[str, ...], second: tuple[str, ...]) -> bool:
    """Tell whether two lists of parts have one in common; an empty list is the whole object."""
    return not first or not second or not set(first).isdisjoint(second)
