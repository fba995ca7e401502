"""Takes in what was sent and looked at: what that would change, and the change itself."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass

from service.findings import Finding
from service.keeping.desk import Desk
from service.keeping.imports import SourceFile, TakenIn, apply_import, preview_import
from service.keeping.intake.how_read import HowRead
from service.keeping.intake.kept_files import KeptFiles
from service.keeping.intake.read_as import read_as
from service.keeping.photos.bring import BroughtPhotos, bring_files
from service.keeping.photos.plan import PhotoPlan, plan_photos
from service.keeping.photos.sources import BulkPhotos
from service.pipeline.read import Content
from service.store.history import Stamp
from service.store.load_records import load_objects
from service.store.open import reading
from service.store.plan_records import RecordsPlan

_STREAMED = "xml"


@dataclass(frozen=True, slots=True)
class KeptPreview:
    """What taking it in would do: to the records, with what was noticed, and with the photos."""

    plan: RecordsPlan
    findings: tuple[Finding, ...]
    photos: PhotoPlan


@dataclass(frozen=True, slots=True)
class TakenKept:
    """What was done; None where there were no records, or no photos."""

    records: TakenIn | None
    photos: BroughtPhotos | None


def preview_kept(desk: Desk, kept: KeptFiles, how: HowRead) -> KeptPreview:
    """Say what taking it in would do, without doing it.

    Raises:
        RecordsError: When the records cannot be read so.
        UnstorableTextError: When a text cannot be stored.
        JobError: When the reader had to be stopped.
    """
    collection = read_as(desk, contents_of(kept), how)
    plan = preview_import(desk.engine, collection)
    with reading(desk.engine) as connection:
        stored = {one.object_number: one for one in load_objects(connection)}
    objects = {**stored, **plan.objects.records}
    photos = plan_photos(kept.photos, objects.values())
    return KeptPreview(plan, (*collection.findings, *plan.findings), photos)


def take_in_kept(desk: Desk, kept: KeptFiles, how: HowRead, *, stamp: Stamp) -> TakenKept:
    """Take it in: the records all or none, then the photos; the same again changes nothing.

    Raises:
        RecordsError: When the records cannot be read so.
        UnstorableTextError: When a text cannot be stored.
        JobError: When the reader had to be stopped.
        StoreFullError: When the disk is full.
    """
    records = photos = None
    if kept.records:
        collection = read_as(desk, contents_of(kept), how)
        source = SourceFile(", ".join(kept.records), hash_of(kept))
        records = apply_import(desk.engine, source, collection, stamp=stamp)
    if kept.photos:
        photos = bring_files(desk, BulkPhotos(kept.photos), stamp=stamp)
    return TakenKept(records, photos)


def contents_of(kept: KeptFiles) -> Mapping[str, Content]:
    """Give the bytes of tables and documents; those that are read as a stream stay where they are.

    Raises `OSError` when they were removed meanwhile.
    """
    return {
        name: path if name.rpartition(".")[2].casefold() == _STREAMED else path.read_bytes()
        for name, path in kept.records.items()
    }


def hash_of(kept: KeptFiles) -> str:
    """Give one hash of all tables and documents, in the order of their names."""
    digest = hashlib.sha256()
    for name, path in sorted(kept.records.items()):
        with path.open("rb") as file:
            inner = hashlib.file_digest(file, "sha256")
        digest.update(name.encode() + b"\0" + inner.digest())
    return digest.hexdigest()
