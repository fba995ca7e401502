"""A folder of finished thumbnails, so that a photo is decoded once.

One file holds all sizes of one photo and is named by the SHA-256 of the photo's bytes and the
version of the ladder: a changed photo, or a changed way of making thumbnails, is another file. The
first line is the hash of the second, the second lists the sizes as JSON, the JPEGs follow. A file
is written aside, flushed to the disk and renamed, so that a power cut leaves it whole or absent;
whatever fails its hashes counts as absent and is made again.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
import tempfile
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TypedDict

from service.render.pictures.thumbnails import LADDER_VERSION, Thumbnail, Thumbnails


class _Entry(TypedDict):
    width_px: int
    height_px: int
    sha256: str
    size_bytes: int


@dataclass(frozen=True, slots=True)
class ThumbnailCache:
    """The folder, made when the first thumbnail is kept; it may be deleted at any time."""

    folder: Path

    def find(self, digest: str) -> Thumbnails | None:
        """Give the thumbnails of the photo with this SHA-256, every byte of them checked."""
        path = self._path(digest)
        # Whatever is wrong with a file, from a missing one to a wrong type inside, it is made anew.
        with contextlib.suppress(OSError, ValueError, KeyError, TypeError):
            return _checked(path, path.read_bytes())
        return None

    def keep(self, digest: str, thumbnails: Thumbnails) -> Thumbnails:
        """Write the thumbnails and give them as they now stand in the folder.

        Raises:
            OSError: When the folder cannot be written.
        """
        jpegs = [size.jpeg for size in thumbnails.sizes]
        listed = json.dumps([_entry(size) for size in thumbnails.sizes]).encode()
        head = _digest(listed).encode() + b"\n" + listed + b"\n"
        path = self._path(digest)
        path.parent.mkdir(parents=True, exist_ok=True)
        _write_whole(path, head + b"".join(jpegs))
        return _placed(thumbnails.sizes, path, len(head))

    def _path(self, digest: str) -> Path:
        return self.folder / f"v{LADDER_VERSION}" / digest[:2] / f"{digest}.thumbnails"


def digest_of(data: bytes) -> str:
    """Give the SHA-256 under which a photo's thumbnails are kept."""
    return _digest(data)


def _digest(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


def _entry(size: Thumbnail) -> _Entry:
    return _Entry(
        width_px=size.width_px,
        height_px=size.height_px,
        sha256=size.sha256,
        size_bytes=size.size_bytes,
    )


def _checked(path: Path, stored: bytes) -> Thumbnails | None:
    mark, listed, jpegs = stored.split(b"\n", 2)
    if _digest(listed).encode() != mark:
        return None
    entries: list[_Entry] = json.loads(listed)
    sizes = tuple(Thumbnail(**entry, source=path) for entry in entries)
    start = 0
    for size in sizes:
        if _digest(jpegs[start : start + size.size_bytes]) != size.sha256:
            return None
        start += size.size_bytes
    return _placed(sizes, path, len(stored) - len(jpegs))


def _placed(sizes: tuple[Thumbnail, ...], path: Path, offset_bytes: int) -> Thumbnails:
    placed = []
    for size in sizes:
        placed.append(replace(size, source=path, offset_bytes=offset_bytes))
        offset_bytes += size.size_bytes
    return Thumbnails(tuple(placed))


def _write_whole(path: Path, data: bytes) -> None:
    """Write beside the place, flush, rename, flush the folder: whole or not at all."""
    handle, aside = tempfile.mkstemp(dir=path.parent, prefix=".", suffix=".part")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        Path(aside).replace(path)
    except BaseException:
        Path(aside).unlink(missing_ok=True)
        raise
    _flush_folder(path.parent)


def _flush_folder(folder: Path) -> None:
    # Windows opens no folders; there the file system keeps the rename by itself.
    with contextlib.suppress(PermissionError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
