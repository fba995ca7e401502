"""A folder of finished thumbnails, so that a photo is decoded once.

One file holds all sizes of one photo in one grade and is named by the SHA-256 of the photo's bytes,
the grade and the version of the ladder: a changed photo, or a changed way of making thumbnails, is
another file. The first line is the hash of the second, the second lists the sizes as JSON, the
JPEGs follow. Looking one up reads the two lines alone and counts the bytes; a JPEG is held to its
hash whenever it is read. Whatever fails counts as absent and is made again.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TypedDict

from service.render.pictures.files import write_whole
from service.render.pictures.thumbnails import LADDER_VERSION, Grade, Thumbnail, Thumbnails

# The two lines take about 200 bytes and 150 more for each size; a photo has up to five.
_MOST_HEAD_BYTES = 4096


class _Entry(TypedDict):
    width_px: int
    height_px: int
    sha256: str
    size_bytes: int


@dataclass(frozen=True, slots=True)
class ThumbnailCache:
    """The folder, made when the first thumbnail is kept; it may be deleted at any time."""

    folder: Path

    def find(self, digest: str, grade: Grade = Grade.SMALL) -> Thumbnails | None:
        """Give the thumbnails of the photo with this SHA-256; their JPEGs are not yet checked."""
        path = self._path(digest, grade)
        # Whatever is wrong with a file, from a missing one to a wrong type inside, it is made anew.
        with contextlib.suppress(OSError, ValueError, KeyError, TypeError), path.open("rb") as file:
            head = file.read(_MOST_HEAD_BYTES)
            return _listed(path, head, os.fstat(file.fileno()).st_size, grade)
        return None

    def keep(self, digest: str, thumbnails: Thumbnails) -> Thumbnails:
        """Write the thumbnails and give them as they now stand in the folder.

        Raises:
            OSError: When the folder cannot be written.
        """
        jpegs = [size.jpeg for size in thumbnails.sizes]
        listed = json.dumps([_entry(size) for size in thumbnails.sizes]).encode()
        head = _digest(listed).encode() + b"\n" + listed + b"\n"
        path = self._path(digest, thumbnails.grade)
        path.parent.mkdir(parents=True, exist_ok=True)
        write_whole(path, head + b"".join(jpegs))
        return _placed(thumbnails, path, len(head))

    def _path(self, digest: str, grade: Grade) -> Path:
        name = f"{digest}-{grade.name.lower()}.thumbnails"
        return self.folder / f"v{LADDER_VERSION}" / digest[:2] / name


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


def _listed(path: Path, head: bytes, stored_bytes: int, grade: Grade) -> Thumbnails | None:
    """Read the two lines; None where they, or the length of the file, are not as written."""
    mark, listed, _ = head.split(b"\n", 2)
    if _digest(listed).encode() != mark:
        return None
    entries: list[_Entry] = json.loads(listed)
    sizes = tuple(Thumbnail(**entry, source=path) for entry in entries)
    head_bytes = len(mark) + len(listed) + 2
    if head_bytes + sum(size.size_bytes for size in sizes) != stored_bytes:
        return None
    return _placed(Thumbnails(sizes, grade), path, head_bytes)


def _placed(thumbnails: Thumbnails, path: Path, offset_bytes: int) -> Thumbnails:
    placed = []
    for size in thumbnails.sizes:
        placed.append(replace(size, source=path, offset_bytes=offset_bytes))
        offset_bytes += size.size_bytes
    return replace(thumbnails, sizes=tuple(placed))
