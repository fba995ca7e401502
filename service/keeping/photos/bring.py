"""Brings photos to the store: matched, decoded once, their originals kept by SHA-256."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path, PurePath

from service.findings import Finding, Where, make_finding
from service.keeping.desk import Desk
from service.keeping.photos.plan import MatchedPhoto, PhotoPlan, plan_photos
from service.keeping.photos.sources import BulkPhotos, open_photos
from service.pipeline.ready import Progress, tell_nobody
from service.render.pictures.prepare import prepare_photos
from service.sentence import Sentence
from service.store.history import Stamp
from service.store.load_records import load_objects
from service.store.open import reading, writing
from service.store.shelf.photos import BroughtPhoto, bring_photos


@dataclass(frozen=True, slots=True)
class BroughtPhotos:
    """What came of photos in bulk.

    Attributes:
        matched: The files that could be used, each with its object.
        new: How many of them the store did not have before.
        findings: What fits no object or several, what cannot be opened, what was left out.
    """

    matched: tuple[MatchedPhoto, ...]
    new: int
    findings: tuple[Finding, ...]


def bring_in_bulk(
    desk: Desk, source: Path, *, stamp: Stamp, on_progress: Progress = tell_nobody
) -> BroughtPhotos:
    """Take the photos of a folder or ZIP file in; the same again changes nothing.

    Raises:
        MissingSourceError: When there is no such file or folder.
        UnreadableFileError: When the ZIP file is damaged, locked with a password, or too large.
        StoreFullError: When the disk is full.
    """
    with open_photos(source, scratch=desk.workshop.scratch_folder) as bulk:
        return bring_files(desk, bulk, stamp=stamp, on_progress=on_progress)


def bring_files(
    desk: Desk, bulk: BulkPhotos, *, stamp: Stamp, on_progress: Progress = tell_nobody
) -> BroughtPhotos:
    """Take photos in that lie in files already; the same again changes nothing.

    Raises:
        StoreFullError: When the disk is full.
    """
    with reading(desk.engine) as connection:
        plan = plan_photos(bulk.files, load_objects(connection))
    wanted = {photo.file: bulk.files[photo.file] for photo in plan.matched}
    usable, findings = prepare_photos(
        wanted,
        cache_folder=desk.workshop.cache_folder,
        workers=desk.workshop.decoders,
        on_progress=lambda done: on_progress("photos", done, len(wanted)),
    )
    matched = tuple(photo for photo in plan.matched if photo.file in usable)
    brought = list(_keep(desk, matched, bulk.files, on_progress))
    with writing(desk.engine) as connection:
        new = bring_photos(connection, brought, stamp=stamp)
    return BroughtPhotos(matched, new, (*findings, *tell_plan(plan, bulk.left_out)))


def _keep(
    desk: Desk, matched: Iterable[MatchedPhoto], files: Mapping[str, Path], on_progress: Progress
) -> Iterator[BroughtPhoto]:
    """Put each original on the shelf, once however many objects it shows."""
    photos = tuple(matched)
    stored = {
        name: desk.shelf.put(files[name], PurePath(name).suffix.lower())
        for name in dict.fromkeys(photo.file for photo in photos)
    }
    for done, photo in enumerate(photos, start=1):
        yield BroughtPhoto(photo.object_number, photo.named_as, photo.role, stored[photo.file])
        on_progress("kept", done, len(photos))


def tell_plan(plan: PhotoPlan, left_out: Iterable[str]) -> Iterator[Finding]:
    """Tell of photos that fit no object or several, and of those that were left out."""
    for name, numbers in plan.ambiguous:
        message = Sentence(
            "{name} fits {numbers}; it was given to none of them.",
            name=name,
            numbers=", ".join(numbers),
        )
        yield make_finding("photo-ambiguous", Where(file=name), message)
    for name in plan.unmatched:
        message = Sentence(
            "{name} holds no number of an object, and no record names it.", name=name
        )
        yield make_finding("photo-not-named", Where(file=name), message)
    for name in left_out:
        message = Sentence(
            "{name} was left out: its name came before, it is a link, or it is over 25 MB.",
            name=name,
        )
        yield make_finding("photo-unusable", Where(file=name), message)
