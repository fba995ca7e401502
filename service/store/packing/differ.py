"""How packings will differ: what comes into a container, goes out of it, or moves within it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from enum import StrEnum

from service.records.record import PackingRecord, PlaceRecord
from service.store.canonical import compare_json, encode_record
from service.store.packing.occupancy import Places

_Key = tuple[str, frozenset[str]]


class Course(StrEnum):
    """What becomes of an object, or of named parts of it, in one container."""

    IN = "in"
    OUT = "out"
    MOVED = "moved"
    NOTED = "noted"
    """It stays where it is; what is said of how it lies is another."""


@dataclass(frozen=True, slots=True)
class PlaceChange:
    """An object as it lies and as it will; None where it does not lie in this container.

    `other` is the container it comes from or goes to, where that is packed anew as well.
    """

    course: Course
    before: PlaceRecord | None
    after: PlaceRecord | None
    other: str = ""

    @property
    def place(self) -> PlaceRecord:
        """Where it will lie; where it goes out, where it lay.

        Raises:
            ValueError: When it lies nowhere.
        """
        place = self.after or self.before
        if place is None:
            message = "a change needs a place"
            raise ValueError(message)
        return place


@dataclass(frozen=True, slots=True)
class Repacking:
    """How one container is packed anew.

    `packed` has who, when and why, where they differ: as they were, and as they will be.
    """

    places: tuple[PlaceChange, ...]
    packed: Mapping[str, Mapping[str, object]]


def compare_repacked(
    current: Mapping[str, PackingRecord], wanted: Mapping[str, PackingRecord]
) -> dict[str, Repacking]:
    """Compare packings by container; one that is not current yet is compared with nothing."""
    found = {
        number: Repacking(
            tuple(_compare_places(_places_of(current, number), packing.places)),
            _compare_packed(current.get(number, PackingRecord(number)), packing),
        )
        for number, packing in wanted.items()
    }
    came = _containers_by_key(found, Course.IN)
    went = _containers_by_key(found, Course.OUT)
    others = {Course.IN: went, Course.OUT: came}
    return {
        number: replace(
            one,
            places=tuple(
                replace(each, other=others.get(each.course, {}).get(_key(each.place), ""))
                for each in one.places
            ),
        )
        for number, one in found.items()
    }


def _places_of(packings: Mapping[str, PackingRecord], number: str) -> Places:
    return packings[number].places if number in packings else ()


def _compare_places(before: Places, after: Places) -> Iterator[PlaceChange]:
    """Give what differs: first what will lie there, in its order, then what goes out."""
    left = _by_key(before)
    for place in after:
        spots = left.get(_key(place), [])
        # An object may be named twice in one container: what stays as it is pairs first.
        was = (spots.pop(spots.index(place) if place in spots else 0)) if spots else None
        if was is None:
            yield PlaceChange(Course.IN, None, place)
        elif was != place:
            stays = (was.layer, was.compartment) == (place.layer, place.compartment)
            yield PlaceChange(Course.NOTED if stays else Course.MOVED, was, place)
    for spots in left.values():
        for was in spots:
            yield PlaceChange(Course.OUT, was, None)


def _compare_packed(before: PackingRecord, after: PackingRecord) -> dict[str, dict[str, object]]:
    texts = (encode_record(replace(one, places=(), revision=1)) for one in (before, after))
    return compare_json(*texts)


def _containers_by_key(found: Mapping[str, Repacking], course: Course) -> dict[_Key, str]:
    return {
        _key(each.place): number
        for number, one in found.items()
        for each in one.places
        if each.course is course
    }


def _by_key(places: Places) -> dict[_Key, list[PlaceRecord]]:
    spots: dict[_Key, list[PlaceRecord]] = {}
    for place in places:
        spots.setdefault(_key(place), []).append(place)
    return spots


def _key(place: PlaceRecord) -> _Key:
    return (place.object_number, frozenset(place.parts))
