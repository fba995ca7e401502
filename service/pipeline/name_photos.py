"""Gives records the photos that their names say, and tells what was matched and what was not."""

from __future__ import annotations

from collections.abc import Collection as Names
from collections.abc import Iterable, Iterator
from dataclasses import replace

from service.findings import Finding, Where, make_finding
from service.records.photos.match import PhotoMatches, match_photos
from service.records.record import Collection
from service.records.rows.text import quote_text
from service.sentence import Sentence

_SHOWN = 3
"""How many photos of each kind are told by name."""


def name_photos(
    photos: Iterable[str], collection: Collection
) -> tuple[Collection, tuple[Finding, ...]]:
    """Add photos to records that name none; a record that names photos stays as it is."""
    names = sorted(photos)
    matches = match_photos(names, collection)
    objects = tuple(
        replace(record, photos=matches.photos[record.object_number])
        if record.object_number in matches.photos and not record.photos
        else record
        for record in collection.objects
    )
    named = replace(collection, objects=objects)
    findings = (
        *_tell_matched(matches),
        *_tell_ambiguous(matches),
        *_tell_unnamed(names, named, matches),
    )
    return named, findings


def _tell_matched(matches: PhotoMatches) -> Iterator[Finding]:
    given = [(photo.file, number) for number, of in matches.photos.items() for photo in of]
    if given:
        shown = [f"{quote_text(file)} to {number}" for file, number in given[:_SHOWN]]
        some = "1 photo was" if len(given) == 1 else f"{len(given)} photos were"
        message = Sentence(
            "{some} matched by name: {shown}.", some=some, shown=_list_names(shown, len(given))
        )
        yield make_finding("photo-matched", Where(), message)


def _tell_ambiguous(matches: PhotoMatches) -> Iterator[Finding]:
    for name, numbers in matches.ambiguous[:_SHOWN]:
        fits = _list_names(numbers[:_SHOWN], len(numbers))
        message = Sentence(
            "{name} fits {fits}; it was given to none of them.", name=quote_text(name), fits=fits
        )
        yield make_finding("photo-ambiguous", Where(), message)
    more = len(matches.ambiguous) - _SHOWN
    if more > 0:
        files = "1 more file fits" if more == 1 else f"{more} more files fit"
        message = Sentence("{files} more than one object.", files=files)
        yield make_finding("photo-ambiguous", Where(), message)


def _tell_unnamed(
    names: Iterable[str], collection: Collection, matches: PhotoMatches
) -> Iterator[Finding]:
    """Report photos that were handed over, that no record names and that fit no object."""
    told = {photo.file for record in collection.objects for photo in record.photos}
    told.update(name for name, _numbers in matches.ambiguous)
    lost = [name for name in names if name not in told]
    if lost:
        message = Sentence("No record names {lost}.", lost=_list_names(lost[:_SHOWN], len(lost)))
        yield make_finding("photo-not-named", Where(), message)


def _list_names(shown: Names[str], of: int) -> str:
    more = f" and {of - len(shown)} more" if of > len(shown) else ""
    return ", ".join(shown) + more
