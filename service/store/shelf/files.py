"""The shelf: photos and finished PDFs, each named by the SHA-256 of its bytes and written once.

A folder on this machine, or a bucket of an S3-compatible store. What is put is on the disk before
`put` returns: the store may name it in the next transaction.
"""

from __future__ import annotations

import hashlib
import os
from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from obstore.exceptions import AlreadyExistsError
from obstore.store import LocalStore, ObjectStore, from_url

from service.errors import FileDamagedError, FileNotStoredError

_ROOT = "sha256"
_PORTION_BYTES = 1 << 20


@dataclass(frozen=True, slots=True)
class StoredFile:
    """A file on the shelf: its hash, the ending of its name such as `.pdf`, and its length."""

    sha256: str
    suffix: str
    length_bytes: int


class FileShelf:
    """Files by their SHA-256."""

    def __init__(self, store: ObjectStore, *, folder: Path | None, scratch: Path) -> None:
        """Keep where files lie; `scratch` takes copies of those that lie on no disk of ours."""
        self._store = store
        self._folder = folder
        self._scratch = scratch

    def put(self, source: bytes | Path, suffix: str) -> StoredFile:
        """Put a file on the shelf; one that is there already is left as it is."""
        stored = _describe(source, suffix)
        key = _key(stored.sha256, suffix)
        with suppress(AlreadyExistsError):
            self._store.put(key, source, mode="create")
        if self._folder is not None:
            _sync(self._folder / key)
        return stored

    def get(self, sha256: str, suffix: str) -> bytes:
        """Give the bytes of a file, which are those that were put.

        Raises:
            FileNotStoredError: When there is no such file.
            FileDamagedError: When its bytes have changed since.
        """
        try:
            data = bytes(self._store.get(_key(sha256, suffix)).bytes())
        except FileNotFoundError as error:
            raise FileNotStoredError(sha256) from error
        if hashlib.sha256(data).hexdigest() != sha256:
            raise FileDamagedError(sha256)
        return data

    def local_path(self, sha256: str, suffix: str) -> Path:
        """Give a path at which the file can be read; there is nothing at it where it is lost."""
        if self._folder is not None:
            return self._folder / _key(sha256, suffix)
        path = self._scratch / f"{sha256}{suffix}"
        if not path.is_file():
            with suppress(FileNotStoredError, FileDamagedError):
                path.write_bytes(self.get(sha256, suffix))
        return path

    def names(self) -> Iterator[tuple[str, str, datetime]]:
        """List what lies on the shelf: hash, ending of the name, and when it was put there."""
        for some in self._store.list(_ROOT):
            for found in some:
                name = Path(found["path"])
                yield name.stem, name.suffix, found["last_modified"]

    def sweep(self, is_named: Callable[[str], bool], *, before: datetime) -> int:
        """Remove the files that no row names and that were put before a moment; give how many."""
        lost = [
            _key(sha256, suffix)
            for sha256, suffix, put_at in self.names()
            if put_at < before and not is_named(sha256)
        ]
        for key in lost:
            self._store.delete(key)
        return len(lost)


def open_shelf(folder: Path, *, scratch: Path) -> FileShelf:
    """Open the shelf in a folder, which is made where it is missing; only its owner reads it."""
    folder.mkdir(parents=True, exist_ok=True, mode=0o700)
    return FileShelf(LocalStore(folder), folder=folder, scratch=scratch)


def open_bucket(url: str, *, scratch: Path) -> FileShelf:
    """Open the shelf in a bucket such as `s3://museum-cards`; keys come from the environment."""
    return FileShelf(from_url(url), folder=None, scratch=scratch)


def _key(sha256: str, suffix: str) -> str:
    return f"{_ROOT}/{sha256[:2]}/{sha256}{suffix}"


def _describe(source: bytes | Path, suffix: str) -> StoredFile:
    if isinstance(source, bytes):
        return StoredFile(hashlib.sha256(source).hexdigest(), suffix, len(source))
    digest, length_bytes = hashlib.sha256(), 0
    with source.open("rb") as file:
        while portion := file.read(_PORTION_BYTES):
            digest.update(portion)
            length_bytes += len(portion)
    return StoredFile(digest.hexdigest(), suffix, length_bytes)


def _sync(path: Path) -> None:
    """Bring a file and its folder to the disk: the library links a file without doing so."""
    for one in (path, path.parent):
        handle = os.open(one, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
