"""The index of object numbers by which file names are searched."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from service.records.cells.parts import expand_marks
from service.records.photos.written import Written, read_written
from service.records.record import Collection, ObjectRecord

Key = tuple[str, ...]

# What cameras and people write before a number; common practice, no source.
_WORDS_IN_FRONT = {
    *("img", "image", "photo", "photos", "foto", "fotos", "pic", "picture", "scan"),
    *("dsc", "dscn", "dscf", "pxl", "obj", "object", "inv", "acc", "no", "nr"),
}
_RANGE = re.compile(r"(.*\d)([a-z]\s*[-\u2013\u2014]\s*[a-z])", re.IGNORECASE | re.DOTALL)
_MARK = re.compile(r"[^\W\d_]{1,2}|\d{1,3}")


@dataclass(frozen=True, slots=True)
class Entry:
    """One way to name an object: by its whole number, or by what its parts add or leave out."""

    object_number: str
    written: Written
    whole: bool
    bare_length: int
    """How many runs the number has without the mark of a part."""


@dataclass(frozen=True, slots=True)
class Numbers:
    """What is known of the numbers of a collection.

    Attributes:
        entries: Those who share a key, by the key.
        lengths: How many runs numbers have, by their first run.
        prefixes: Letters with which numbers begin.
        continued: Beginnings of longer numbers, and whether digits come next.
        usual_length: How many runs most numbers have.
        words_in_front: Words that are no part of the number behind them.
    """

    entries: dict[Key, tuple[Entry, ...]]
    lengths: dict[str, tuple[int, ...]]
    prefixes: frozenset[str]
    continued: frozenset[tuple[Key, bool]]
    usual_length: int
    words_in_front: frozenset[str]

    def goes_on(self, key: Key, run: str) -> bool:
        """Tell whether a number begins with `key` and goes on with a run like `run`."""
        return (key, run.isdecimal()) in self.continued


def index_numbers(collection: Collection) -> Numbers:
    """Index the numbers of every object, of those with photos too: their files are theirs."""
    entries: dict[Key, tuple[Entry, ...]] = {}
    lengths: dict[str, set[int]] = {}
    whole: list[Key] = []
    for record in collection.objects:
        for entry in _name_ways(record):
            key = entry.written.key
            entries[key] = (*entries.get(key, ()), entry)
            lengths.setdefault(key[0], set()).add(len(key))
            if entry.whole:
                whole.append(key)
    counted = Counter(map(len, whole))
    return Numbers(
        entries,
        {run: tuple(sorted(found)) for run, found in lengths.items()},
        frozenset(key[0] for key in whole if len(key) > 1 and not key[0].isdecimal()),
        frozenset((key[:-1], key[-1].isdecimal()) for key in entries),
        max(counted, key=lambda length: (counted[length], length), default=0),
        frozenset(_WORDS_IN_FRONT.union(read_written(collection.museum.short_name).key)),
    )


def _name_ways(record: ObjectRecord) -> Iterator[Entry]:
    """Give the whole number, the number without a range of parts, and the number of each part."""
    number = read_written(record.object_number)
    if not number.key:
        return
    yield Entry(record.object_number, number, whole=True, bare_length=len(number.key))
    marks = [part.mark for part in record.parts if _MARK.fullmatch(part.mark)]
    bare = number
    if match := _RANGE.fullmatch(number.text):
        bare = read_written(match[1])
        marks += expand_marks(match[2])
        yield Entry(record.object_number, bare, whole=False, bare_length=len(bare.key))
    for mark in dict.fromkeys(marks):
        joint = "" if bare.key[-1].isdecimal() and not mark.isdecimal() else "."
        part = read_written(f"{bare.text}{joint}{mark}")
        yield Entry(record.object_number, part, whole=False, bare_length=len(bare.key))
