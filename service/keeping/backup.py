"""One file that holds everything: database, photos, PDFs and measures, with the hash of each.

A ZIP file that any program opens. Nothing in it is packed again: photos and PDFs do not get
smaller, and a damaged part costs no other.
"""

from __future__ import annotations

import hashlib
import json
import os
import zipfile
import zlib
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path
from tempfile import NamedTemporaryFile, TemporaryDirectory

from service.errors import BackupError
from service.keeping.desk import Desk
from service.keeping.paper.own_stocks import NAME as STOCKS
from service.keeping.printing.printers_file import NAME as PRINTERS
from service.pipeline.ready import Progress, tell_nobody
from service.store.backup import check_database, copy_database
from service.store.open import STORE_FILE, open_url, reading
from service.store.shelf.files import StoredFile, open_shelf, sync
from service.store.shelf.photos import load_file_names

MANIFEST = "manifest.json"
MEASURES = (PRINTERS, STOCKS)
"""Files beside the store: what somebody measured with a ruler, and would have to measure again."""
_FORMAT = 1
_PORTION_BYTES = 1 << 20


@dataclass(frozen=True, slots=True)
class Backup:
    """A backup that is whole: its file, and how many photos and PDFs it holds."""

    path: Path
    files: int
    length_bytes: int


def make_backup(desk: Desk, target: Path, *, on_progress: Progress = tell_nobody) -> Backup:
    """Write a backup while others work: the store as it is at one moment, and its files.

    Files are only ever added, so that all that the copy names are there; with them come the
    printers and sheets that were measured. Under its final name there is a whole backup, or none.

    Raises:
        BackupError: When the file exists already, its folder does not, or the store cannot be
            copied.
        FileNotStoredError: When a file that the store names is lost.
        FileDamagedError: When one is damaged.
    """
    if target.exists():
        raise BackupError(str(target), reason="there is such a file already")
    if not target.parent.is_dir():
        raise BackupError(str(target), reason="there is no such folder to write it in")
    with TemporaryDirectory(dir=target.parent) as scratch, _write_whole(target) as packed:
        copy = Path(scratch) / STORE_FILE
        copy_database(desk.engine, copy)
        files = _read_names(copy)
        hashes = {STORE_FILE: _hash_of(copy)}
        packed.write(copy, STORE_FILE)
        for done, stored in enumerate(files, start=1):
            packed.writestr(_entry(stored), desk.shelf.get(stored.sha256, stored.suffix))
            hashes[_entry(stored)] = stored.sha256
            on_progress("files", done, len(files))
        for name, data in _read_measures(desk.data_folder):
            packed.writestr(name, data)
            hashes[name] = hashlib.sha256(data).hexdigest()
        packed.writestr(MANIFEST, json.dumps({"format": _FORMAT, "sha256": hashes}, indent=1))
    return Backup(target, len(files), target.stat().st_size)


def restore_backup(source: Path, data_folder: Path, *, on_progress: Progress = tell_nobody) -> int:
    """Put a backup into a data folder that has no store yet, and give how many files it held.

    Everything is compared with the manifest before the store gets its name. A file that lies
    damaged in the folder is replaced; printers and sheets measured there already stay.

    Raises:
        BackupError: When the folder has a store or the journal of one, or the backup is not whole.
        StoreFullError: When the disk is full.
    """
    target = data_folder / STORE_FILE
    _check_empty(data_folder)
    data_folder.mkdir(parents=True, exist_ok=True)
    with (
        TemporaryDirectory(dir=data_folder) as scratch,
        _open_backup(source) as packed,
    ):
        hashes = _read_manifest(packed, source)
        copy = Path(scratch) / STORE_FILE
        shelf = open_shelf(data_folder / "files", scratch=Path(scratch))
        for done, (name, sha256) in enumerate(hashes.items(), start=1):
            data = _read(packed, name, source)
            if hashlib.sha256(data).hexdigest() != sha256:
                raise BackupError(source.name, reason=f"{name} in it is damaged")
            if name == STORE_FILE:
                copy.write_bytes(data)
            elif name in MEASURES:
                _put_beside(data_folder / name, data, Path(scratch))
            else:
                shelf.put_back(data, Path(name).suffix)
            on_progress("files", done, len(hashes))
        check_database(copy)
        _check_whole(copy, hashes, source)
        copy.chmod(0o600)
        sync(copy)
        copy.replace(target)
        sync(data_folder)
    return len(hashes.keys() - {STORE_FILE, *MEASURES})


def _read_measures(data_folder: Path) -> Iterator[tuple[str, bytes]]:
    for name in MEASURES:
        with suppress(FileNotFoundError):
            yield name, (data_folder / name).read_bytes()


def _put_beside(path: Path, data: bytes, scratch: Path) -> None:
    """Put a file where none is, whole or not at all."""
    if not path.exists():
        part = scratch / path.name
        part.write_bytes(data)
        sync(part)
        part.replace(path)


@contextmanager
def _write_whole(target: Path) -> Iterator[zipfile.ZipFile]:
    """Write a file under another name, and give it its own once it is on the disk."""
    with NamedTemporaryFile(dir=target.parent, delete=False) as part:
        path = Path(part.name)
        try:
            with zipfile.ZipFile(part, "w", zipfile.ZIP_STORED) as packed:
                yield packed
            part.flush()
            os.fsync(part.fileno())
            path.replace(target)
            sync(target.parent)
        finally:
            path.unlink(missing_ok=True)


def _check_empty(data_folder: Path) -> None:
    """Refuse a folder with a store, or with what a store left that was killed and taken away.

    SQLite would play an old journal into the restored database and damage it (sqlite.org, "How To
    Corrupt An SQLite Database File", 1.4).

    Raises:
        BackupError: When there is any of them.
    """
    if (data_folder / STORE_FILE).exists():
        raise BackupError(str(data_folder), reason="there is a store in it already")
    for left in sorted(data_folder.glob(f"{STORE_FILE}-*")):
        reason = f"{left.name} in it is left over from another store; move it away first"
        raise BackupError(str(data_folder), reason=reason)


@contextmanager
def _open_backup(source: Path) -> Iterator[zipfile.ZipFile]:
    """Open a backup.

    Raises:
        BackupError: When it is not there, or damaged.
    """
    try:
        with zipfile.ZipFile(source) as packed:
            yield packed
    except (zipfile.BadZipFile, FileNotFoundError, IsADirectoryError, PermissionError) as error:
        raise BackupError(source.name, reason=f"it is no whole backup ({error})") from error


def _read(packed: zipfile.ZipFile, name: str, source: Path) -> bytes:
    """Read one file of a backup.

    Raises:
        BackupError: When it is not in it, or damaged.
    """
    try:
        return packed.read(name)
    except (
        zipfile.BadZipFile,
        zlib.error,
        KeyError,
        EOFError,
        RuntimeError,
        NotImplementedError,
    ) as error:
        raise BackupError(source.name, reason=f"{name} in it cannot be read ({error})") from error


def _read_manifest(packed: zipfile.ZipFile, source: Path) -> dict[str, str]:
    """Read which files there must be; the database is one of them.

    Raises:
        BackupError: When it cannot be read.
    """
    try:
        manifest = json.loads(_read(packed, MANIFEST, source))
        hashes = {str(name): str(sha256) for name, sha256 in manifest["sha256"].items()}
    except (ValueError, TypeError, KeyError, AttributeError) as error:
        raise BackupError(source.name, reason="it has no manifest that can be read") from error
    if manifest.get("format") != _FORMAT or STORE_FILE not in hashes:
        raise BackupError(source.name, reason="it was made by another version of the service")
    return hashes


def _check_whole(copy: Path, hashes: dict[str, str], source: Path) -> None:
    """Compare what the database names with what the backup holds.

    Raises:
        BackupError: When a file is missing.
    """
    for stored in _read_names(copy):
        if hashes.get(_entry(stored)) != stored.sha256:
            raise BackupError(source.name, reason=f"{_entry(stored)} is not in it")


def _read_names(copy: Path) -> list[StoredFile]:
    engine = open_url(f"sqlite:///{copy}")
    try:
        with reading(engine) as connection:
            return list(load_file_names(connection).values())
    finally:
        engine.dispose()


def _entry(stored: StoredFile) -> str:
    return f"files/{stored.sha256}{stored.suffix}"


def _hash_of(path: Path) -> str:
    digest = hashlib.sha256()
    with path.open("rb") as file:
        while portion := file.read(_PORTION_BYTES):
            digest.update(portion)
    return digest.hexdigest()
