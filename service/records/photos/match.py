"""Matches photos to objects that name none, by what the files are called.

There is no published standard of naming files; the rules are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from service.records.naturally import natural_key
from service.records.photos.boundaries import begins_here, ends_here
from service.records.photos.numbers import Entry, Key, Numbers, index_numbers
from service.records.photos.sides import find_role
from service.records.photos.written import Written, read_written, trim_ending
from service.records.record import Collection, PhotoReference, PhotoRole

_MONTHS, _DAYS = 12, 31


@dataclass(frozen=True, slots=True)
class PhotoMatches:
    """Whose photos the files are.

    Attributes:
        photos: The photos of each object that named none, by its number, the front first.
        ambiguous: Files that fit several objects equally, and the numbers of those.
    """

    photos: Mapping[str, tuple[PhotoReference, ...]]
    ambiguous: tuple[tuple[str, tuple[str, ...]], ...] = ()


@dataclass(frozen=True, slots=True)
class _Hit:
    """A number found in a name, from run `start` to `stop`, which is not included."""

    start: int
    stop: int
    entries: tuple[Entry, ...]
    verbatim: bool


@dataclass(frozen=True, slots=True)
class _Shot:
    """One file of an object: the side it names, and what stands behind the number."""

    file: str
    role: PhotoRole | None
    rest: str


def match_photos(names: Iterable[str], collection: Collection) -> PhotoMatches:
    """Match names that no record gives to records that give none; the order is no matter."""
    bare = {record.object_number for record in collection.objects if not record.photos}
    named = {photo.file for record in collection.objects for photo in record.photos}
    free = sorted(set(names) - named)
    if not bare or not free:
        return PhotoMatches({})
    numbers = index_numbers(collection)
    shots: dict[str, list[_Shot]] = {}
    ambiguous: list[tuple[str, tuple[str, ...]]] = []
    for name in free:
        written = read_written(trim_ending(name))
        hits = _find_hits(written, numbers)
        owners = {entry.object_number for hit in hits for entry in hit.entries}
        if not owners & bare:
            continue
        if len(owners) > 1:
            ambiguous.append((name, tuple(sorted(owners, key=natural_key))))
        else:
            shots.setdefault(owners.pop(), []).append(_read_shot(name, written, hits[0]))
    return PhotoMatches({number: _arrange(of) for number, of in shots.items()}, tuple(ambiguous))


def _find_hits(written: Written, numbers: Numbers) -> list[_Hit]:
    """Find the numbers that stand in a name, the longest first; one written as it is hides more."""
    hits = [
        hit
        for start, run in enumerate(written.key)
        for length in numbers.lengths.get(run, ())
        if (entries := numbers.entries.get(written.key[start : start + length]))
        and (hit := _try_hit(written, start, entries))
        and begins_here(written, start, hit.stop, numbers)
        and ends_here(written, start, hit.stop, numbers)
    ]
    hits.sort(key=lambda hit: (hit.start - hit.stop, hit.start))
    return [hit for hit in hits if not any(_hides(other, hit) for other in hits)]


def _hides(hit: _Hit, other: _Hit) -> bool:
    inside = hit.start <= other.start and other.stop <= hit.stop
    return hit.verbatim and inside and hit.stop - hit.start > other.stop - other.start


def _try_hit(written: Written, start: int, entries: tuple[Entry, ...]) -> _Hit | None:
    """Keep the entries written most like the name; none where a bracket or a date is likelier."""
    stop = start + len(entries[0].written.key)
    text, raw = written.between(start, stop), written.raw[start:stop]
    same = tuple(entry for entry in entries if entry.written.text == text)
    alike = same or tuple(entry for entry in entries if entry.written.raw == raw)
    if not same and any(set(gap) & set("([{") for gap in written.gaps[start + 1 : stop]):
        return None
    if not alike and _is_date(raw):
        return None
    closest = alike or entries
    whole = tuple(entry for entry in closest if entry.whole)
    return _Hit(start, stop, whole or closest, verbatim=bool(same))


def _is_date(raw: Key) -> bool:
    """Tell whether runs are a year, a month and a day of two digits each."""
    return (
        [len(run) for run in raw] == [4, 2, 2]
        and all(run.isdecimal() for run in raw)
        and 1 <= int(raw[1]) <= _MONTHS
        and 1 <= int(raw[2]) <= _DAYS
    )


def _read_shot(name: str, written: Written, hit: _Hit) -> _Shot:
    rest = written.key[hit.start + hit.entries[0].bare_length :]
    return _Shot(name, find_role((*written.key[: hit.start], *rest)), " ".join(rest))


def _arrange(shots: list[_Shot]) -> tuple[PhotoReference, ...]:
    """Put the front first, then the rest in natural order.

    Where no file says that it is the front, the first that names no side is taken for it.
    """
    ordered = shots if len(shots) == 1 else sorted(shots, key=_order)
    plain = [shot for shot in ordered if shot.role is None]
    has_front = any(shot.role is PhotoRole.FRONT for shot in ordered)
    chosen = None if has_front or not plain else plain[0]
    photos = [
        PhotoReference(
            shot.file, PhotoRole.FRONT if shot is chosen else shot.role or PhotoRole.DETAIL
        )
        for shot in ordered
    ]
    return tuple(sorted(photos, key=lambda photo: photo.role is not PhotoRole.FRONT))


def _order(shot: _Shot) -> tuple[object, str, str]:
    return (*natural_key(shot.rest), shot.file)
