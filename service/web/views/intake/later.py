"""Much to take in is done as tasks, which go on whatever becomes of the browser."""

from __future__ import annotations

import tempfile
import zipfile
from pathlib import Path

from service.jobs.line import submit_within
from service.jobs.requests import ImportRequest, PhotosRequest, ShelvedFile
from service.keeping.intake.how_read import HowRead, write_how
from service.keeping.intake.kept_files import KeptFiles
from service.store.shelf.files import FileShelf
from service.web.store.asking import Acting

AT_ONCE_BYTES = 1_000_000
AT_ONCE_PHOTOS = 12
"""What is taken in while somebody waits for the page; common practice, no source."""
_PHOTOS = "photos.zip"


def is_large(kept: KeptFiles) -> bool:
    """Tell whether taking it in lasts longer than a page may."""
    total_bytes = sum(path.stat().st_size for path in kept.records.values())
    return total_bytes > AT_ONCE_BYTES or len(kept.photos) > AT_ONCE_PHOTOS


def ask_for_kept(acting: Acting, kept: KeptFiles, how: HowRead) -> tuple[str, str]:
    """Ask for the records and then the photos; give the names of both tasks, empty for none.

    Raises:
        StoreFullError: When the disk is full.
    """
    counter = acting.counter
    requests: dict[str, ImportRequest | PhotosRequest] = {}
    if kept.records:
        requests["records"] = _shelve_records(counter.shelf, kept, how)
    if kept.photos:
        requests["photos"] = _shelve_photos(counter.shelf, kept, counter.scratch_folder)
    with counter.writing() as connection:
        # The line is served in its order: photos find the objects that came with them.
        named = {
            what: submit_within(connection, counter.line, request, stamp=acting.stamp)
            for what, request in requests.items()
        }
    return named.get("records", ""), named.get("photos", "")


def _shelve_records(shelf: FileShelf, kept: KeptFiles, how: HowRead) -> ImportRequest:
    files = tuple(
        ShelvedFile(name, shelf.put(path, ShelvedFile(name, "").suffix).sha256)
        for name, path in kept.records.items()
    )
    return ImportRequest(files, how=write_how(how))


def _shelve_photos(shelf: FileShelf, kept: KeptFiles, scratch_folder: Path) -> PhotosRequest:
    with tempfile.TemporaryDirectory(dir=scratch_folder) as folder:
        packed = Path(folder) / _PHOTOS
        with zipfile.ZipFile(packed, "w") as target:
            for name, path in kept.photos.items():
                target.write(path, name)
        return PhotosRequest(ShelvedFile(_PHOTOS, shelf.put(packed, ".zip").sha256))
