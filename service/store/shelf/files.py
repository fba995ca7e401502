"""The shelf: photos and finished PDFs, each named by the SHA-256 of its bytes and written once.

A folder on this machine, or a bucket of an S3-compatible store. What is put is on the disk before
`put` returns: the store may name it in the next transaction.
"""

from __future__ import annotations

import errno
import hashlib
import os
import uuid
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from obstore.exceptions import AlreadyExistsError, GenericError
from obstore.store import LocalStore, ObjectStore, from_url

from service.errors import FileDamagedError, FileNotStoredError, StoreFullError
from service.sentence import Sentence

_ROOT = "sha256"
_PORTION_BYTES = 1 << 20
# The library gives the number of a disk's trouble in its text alone.
_FULL = tuple(f"(os error {number})" for number in (errno.ENOSPC, errno.EDQUOT))


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
        """Put a file on the shelf; one that is there already is left as it is.

        Raises:
            StoreFullError: When the disk is full.
        """
        stored = _describe(source, suffix)
        key = _key(stored.sha256, suffix)
        with suppress(AlreadyExistsError), _telling():
            self._store.put(key, source, mode="create")
        self._sync(key)
        return stored

    def put_back(self, data: bytes, suffix: str) -> StoredFile:
        """Put a file of a backup on the shelf, also in the place of one that is damaged.

        Raises:
            StoreFullError: When the disk is full.
        """
        stored = self.put(data, suffix)
        try:
            self.get(stored.sha256, suffix)
        except FileDamagedError:
            key = _key(stored.sha256, suffix)
            with _telling():
                self._store.put(key, data, mode="overwrite")
            self._sync(key)
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
                data = self.get(sha256, suffix)
                # Another thread may fetch the same file, and must never find half of it.
                aside = path.with_name(f"{uuid.uuid4().hex}.part")
                aside.write_bytes(data)
                aside.replace(path)
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

    def _sync(self, key: str) -> None:
        """Bring a file to the disk: the library links it, and makes its folder, without that."""
        if self._folder is not None:
            path = self._folder / key
            sync(path, path.parent, path.parent.parent)


def open_shelf(folder: Path, *, scratch: Path) -> FileShelf:
    """Open the shelf in a folder, which is made where it is missing; only its owner reads it."""
    folder.mkdir(parents=True, exist_ok=True, mode=0o700)
    (folder / _ROOT).mkdir(exist_ok=True)
    sync(folder, folder.parent)
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


@contextmanager
def _telling() -> Iterator[None]:
    """Tell a full disk from other trouble.

    Raises:
        StoreFullError: When the disk is full.
        GenericError: When it has any other trouble.
    """
    try:
        yield
    except GenericError as error:
        if any(number in str(error) for number in _FULL):
            message = Sentence("There is no room left for photos and PDFs.")
            raise StoreFullError(message) from error
        raise


def sync(*paths: Path) -> None:
    """Bring files, and the names in folders, to the disk."""
    for path in paths:
        handle = os.open(path, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
