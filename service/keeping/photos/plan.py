"""Whose photos the files are: those that records name, then those whose names hold a number."""

from __future__ import annotations

import unicodedata
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass

from service.records.photos.match import match_photos
from service.records.record import Collection, ObjectRecord, PhotoRole


@dataclass(frozen=True, slots=True)
class MatchedPhoto:
    """A file and the object it shows; `named_as` is the name its record gives it."""

    file: str
    object_number: str
    role: PhotoRole
    named_as: str


@dataclass(frozen=True, slots=True)
class PhotoPlan:
    """What was matched, what fits no object, and what fits several, with their numbers."""

    matched: tuple[MatchedPhoto, ...]
    unmatched: tuple[str, ...]
    ambiguous: tuple[tuple[str, tuple[str, ...]], ...]


def plan_photos(names: Iterable[str], objects: Iterable[ObjectRecord]) -> PhotoPlan:
    """Match files to objects by what they are called.

    A file that records name goes to every object whose record names it, whatever its name holds.
    """
    records = tuple(objects)
    files = sorted(set(names))
    named = _index_named(records)
    matched = [
        MatchedPhoto(file, number, role, name)
        for file in files
        for number, role, name in named.get(plain_name(file), ())
    ]
    rest = [file for file in files if plain_name(file) not in named]
    # A record that names photos may get others by their names as well.
    bare = Collection(objects=tuple(ObjectRecord(one.object_number) for one in records))
    found = match_photos(rest, bare)
    matched += [
        MatchedPhoto(photo.file, number, photo.role, photo.file)
        for number, photos in found.photos.items()
        for photo in photos
    ]
    told = {photo.file for photo in matched} | {name for name, _ in found.ambiguous}
    unmatched = tuple(file for file in files if file not in told)
    return PhotoPlan(tuple(matched), unmatched, found.ambiguous)


def _index_named(records: Iterable[ObjectRecord]) -> dict[str, list[tuple[str, PhotoRole, str]]]:
    named: dict[str, list[tuple[str, PhotoRole, str]]] = defaultdict(list)
    for record in records:
        for photo in record.photos:
            named[plain_name(photo.file)].append((record.object_number, photo.role, photo.file))
    return named


def plain_name(name: str) -> str:
    """Give a name as it is compared: file systems differ in case and in how they write accents."""
    return unicodedata.normalize("NFC", name).casefold()
