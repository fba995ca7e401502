"""Readies a collection for print: photos made, packings matched, silence in the records told."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from service.cards.kinds import OBJECT_TAG
from service.contents.arrange import arrange_packings
from service.contents.packing import Packing
from service.findings import Finding, Where, make_finding
from service.handling.hazards import reword_hazards
from service.handling.lifting.load import check_load
from service.handling.packing.check import check_packing
from service.handling.packing.report import Known
from service.handling.presume import presume_hazards
from service.pages.ruler import Ruler
from service.pipeline.name_photos import name_photos
from service.pipeline.options import PrintOptions
from service.pipeline.printable import keep_photos, replace_missing
from service.records.record import Collection, Museum, ObjectRecord, PackingRecord, Questions
from service.render.frames.store import FrameStore
from service.render.pictures.prepare import PhotoSource, prepare_photos
from service.render.pictures.thumbnails import Thumbnails
from service.render.plates.cache import PlateCache
from service.render.worker import Workers
from service.sentence import Sentence

Progress = Callable[[str, int, int], None]
"""Told the name of the step, what is done and how much there is."""


@dataclass(frozen=True, slots=True)
class Workshop:
    """What the main job works with.

    Attributes:
        ruler: Measures text as it will be printed.
        workers: The child processes that read records and ink plates.
        decoders: Those that decode photos, which may be needed while plates are being inked.
        cache_folder: Where thumbnails are kept.
        frames: What the templates make of each look.
        plates: Plates of earlier runs.
        scratch_folder: Where finished files stand until they are taken; it goes with the workshop.
    """

    ruler: Ruler
    workers: Workers
    decoders: Workers
    cache_folder: Path
    frames: FrameStore
    plates: PlateCache
    scratch_folder: Path


@dataclass(frozen=True, slots=True)
class Ready:
    """What can be printed: the packings asked for, their photos, and what was noticed.

    `loose` are objects whose own tags are asked for and that lie in none of these packings.
    """

    museum: Museum
    packings: tuple[Packing, ...]
    thumbnails: dict[str, Thumbnails]
    findings: tuple[Finding, ...]
    loose: tuple[ObjectRecord, ...] = ()


def tell_nobody(_step: str, _done: int, _of: int) -> None:
    """Stand in where nobody watches the progress."""


def make_ready(
    collection: Collection,
    photos: Mapping[str, PhotoSource],
    options: PrintOptions,
    workshop: Workshop,
    *,
    on_progress: Progress = tell_nobody,
) -> Ready:
    """Match photos and packings, make thumbnails, and leave only what can be printed."""
    presumed, presumptions = presume_hazards(collection)
    named, naming_findings = name_photos(photos, reword_hazards(presumed))
    printable, sign_findings = replace_missing(named, workshop.ruler)
    wanted = _photo_names(printable, options)
    # A name from a record is never opened as a path: it could point anywhere.
    missing = workshop.cache_folder / "no such photo"
    thumbnails, photo_findings = prepare_photos(
        {name: photos.get(name, missing) for name in wanted},
        cache_folder=workshop.cache_folder,
        workers=workshop.decoders,
        on_progress=lambda done: on_progress("photos", done, len(wanted)),
    )
    usable = keep_photos(printable, thumbnails.keys())
    arrangement = arrange_packings(usable)
    packings = tuple(
        packing
        for packing in arrangement.packings
        if _is_wanted(packing.container.container_number, options)
    )
    loose = tuple(_loose_objects(usable, packings, options))
    findings = (
        *collection.findings,
        *sign_findings,
        *photo_findings,
        *naming_findings,
        *arrangement.findings,
        *(finding for packing in packings for finding in check_load(packing)),
        *_silent_records(packings, collection.museum.questions),
        *_of_objects_in(packings, loose, presumptions),
        *_packed_badly(packings, collection.museum, Known(options.today)),
    )
    return Ready(collection.museum, packings, thumbnails, findings, loose)


def _loose_objects(
    collection: Collection, packings: Sequence[Packing], options: PrintOptions
) -> Iterable[ObjectRecord]:
    """Give the objects whose tags are asked for by number and that are packed in none of these."""
    tagged = {number for number, kind, _ in options.only if kind == OBJECT_TAG.code}
    tagged -= {one.record.object_number for packing in packings for one in packing.everything}
    return (record for record in collection.objects if record.object_number in tagged)


def _is_wanted(container_number: str, options: PrintOptions) -> bool:
    return not options.containers or container_number in options.containers


def _photo_names(collection: Collection, options: PrintOptions) -> list[str]:
    """Name the photos of every object that is packed in a container to be printed."""
    packed = {
        place.object_number
        for packing in collection.packings
        if _is_wanted(_outermost(packing, collection), options)
        or _is_wanted(packing.container_number, options)
        for place in packing.places
    }
    names = (
        photo.file
        for record in collection.objects
        if record.object_number in packed
        for photo in record.photos
    )
    return list(dict.fromkeys(names))


def _outermost(packing: PackingRecord, collection: Collection) -> str:
    """Name the container that a packing's container lies in, itself where it lies in none."""
    inside = {record.container_number: record.inside for record in collection.containers}
    number, seen = packing.container_number, set[str]()
    while inside.get(number) and number not in seen:
        seen.add(number)
        number = inside[number]
    return number


def _of_objects_in(
    packings: Sequence[Packing], loose: Sequence[ObjectRecord], findings: Iterable[Finding]
) -> Iterable[Finding]:
    """Keep what was found of objects that are packed in what is printed, or get a tag."""
    printed = {one.record.object_number for packing in packings for one in packing.everything}
    printed |= {record.object_number for record in loose}
    return (finding for finding in findings if finding.where.object_number in printed)


def _packed_badly(packings: Iterable[Packing], museum: Museum, known: Known) -> Iterable[Finding]:
    for packing in packings:
        yield from check_packing(packing, known, off=museum.packing_checks_off)


def _silent_records(packings: Sequence[Packing], museum: Questions) -> Iterable[Finding]:
    """Report what a card would need and the records do not say."""
    for packing in packings:
        container = packing.container.container_number
        for packed in packing.contents:
            record = packed.record
            if packed.known and not record.photos and not record.restricted:
                where = Where(container_number=container, object_number=record.object_number)
                message = Sentence(
                    "{object_number} has no photo that can be printed.",
                    object_number=record.object_number,
                )
                yield make_finding("no-photo", where, message)
        asked = packing.container.questions
        if not any((asked.role, asked.phone, asked.person, museum.role, museum.phone)):
            where = Where(container_number=container)
            yield make_finding("nobody-to-ask", where, Sentence("The card cannot say whom to ask."))
