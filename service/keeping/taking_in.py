"""Taking a whole source in, records and the photos beside them."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from service.findings import Finding
from service.keeping.desk import Desk
from service.keeping.imports import SourceFile, TakenIn, apply_import
from service.keeping.intake.reading import read_mapped
from service.keeping.photos.bring import BroughtPhotos, bring_in_bulk
from service.pipeline.read import open_source
from service.pipeline.ready import Progress
from service.store.history import Stamp


@dataclass(frozen=True, slots=True)
class TakenSource:
    """What came of the records and of the photos of a source, and all that was noticed."""

    records: TakenIn
    photos: BroughtPhotos
    findings: tuple[Finding, ...]


def take_in(
    desk: Desk, source: Path, *, stamp: Stamp, on_progress: Progress, mapping: str = ""
) -> TakenSource:
    """Take a folder or an export file in; the same again changes nothing.

    A table is read by the mapping that is named, else by one made for the same headings.

    Raises:
        MissingSourceError: When there is no such file or folder.
        NotFoundError: When there is no such mapping.
        StoreFullError: When the disk is full.
    """
    opened = open_source(source)
    collection = read_mapped(desk, opened.files, mapping=mapping)
    file = SourceFile(source.name, _hash(opened.files))
    records = apply_import(desk.engine, file, collection, stamp=stamp)
    folder, photos = source / "photos", BroughtPhotos((), 0, ())
    if folder.is_dir():
        photos = bring_in_bulk(desk, folder, stamp=stamp, on_progress=on_progress)
    findings = (*collection.findings, *records.saved.findings, *photos.findings)
    return TakenSource(records, photos, findings)


def _hash(files: Mapping[str, bytes | Path]) -> str:
    """Give one hash of all files of a source, in the order of their names."""
    digest = hashlib.sha256()
    for name, content in sorted(files.items()):
        if isinstance(content, bytes):
            whole = hashlib.sha256(content)
        else:
            with content.open("rb") as file:
                whole = hashlib.file_digest(file, "sha256")
        digest.update(name.encode() + b"\0" + whole.digest())
    return digest.hexdigest()
