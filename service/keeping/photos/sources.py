"""Opens photos in bulk: a folder, or a packed one that is unpacked under names of our own."""

from __future__ import annotations

import stat
import zipfile
import zlib
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path, PurePosixPath
from tempfile import TemporaryDirectory

from service.errors import MissingSourceError, UnreadableFileError
from service.keeping.photos.plan import plain_name
from service.records.sources.archive import RATIO_LIMIT
from service.sentence import Sentence

ENTRIES_LIMIT = 10_000
FILE_LIMIT_BYTES = 25 * 1024 * 1024
TOTAL_LIMIT_BYTES = 8 * 1024 * 1024 * 1024
_ENCRYPTED = 0x1
_PORTION_BYTES = 1 << 20
_UNIX = 3


@dataclass(frozen=True, slots=True)
class BulkPhotos:
    """Files by their names alone, and those that were left out: names that came twice, links.

    Names that differ in nothing but case or the writing of accents are the same: a record that
    names the one names the other, and would get now this photo, now that.
    """

    files: Mapping[str, Path]
    left_out: tuple[str, ...] = ()


@contextmanager
def open_photos(source: Path, *, scratch: Path) -> Iterator[BulkPhotos]:
    """Open the photos of a folder and the folders in it, or of a ZIP file.

    What a ZIP file holds is unpacked below `scratch` for as long as it is open; the names in it
    never become paths.

    Raises:
        MissingSourceError: When there is no such file or folder.
        UnreadableFileError: When the ZIP file is damaged, locked with a password, or too large.
    """
    if source.is_dir():
        yield _list_folder(source)
    elif source.is_file():
        with TemporaryDirectory(dir=scratch) as folder:
            yield _unpack(source, Path(folder))
    else:
        raise MissingSourceError(str(source), reason="there is no such file or folder")


def _list_folder(folder: Path) -> BulkPhotos:
    files: dict[str, Path] = {}
    seen = set[str]()
    left_out: list[str] = []
    for path in sorted(folder.rglob("*")):
        if path.is_symlink() or plain_name(path.name) in seen:
            left_out.append(path.relative_to(folder).as_posix())
        elif path.is_file():
            seen.add(plain_name(path.name))
            files[path.name] = path
    return BulkPhotos(files, tuple(left_out))


def _unpack(source: Path, folder: Path) -> BulkPhotos:
    """Unpack a ZIP file.

    Raises:
        UnreadableFileError: When it is damaged, locked with a password, or too large.
    """
    try:
        with zipfile.ZipFile(source) as packed:
            entries = [entry for entry in packed.infolist() if not entry.is_dir()]
            _check(entries, name=source.name)
            return _unpack_entries(packed, entries, folder)
    except (
        zipfile.BadZipFile,
        zlib.error,
        NotImplementedError,
        EOFError,
        RuntimeError,
        ValueError,
    ) as error:
        raise UnreadableFileError(source.name, tried="it is no ZIP file, or damaged") from error


def _check(entries: list[zipfile.ZipInfo], *, name: str) -> None:
    total_bytes = sum(entry.file_size for entry in entries)
    faults = (
        (len(entries) > ENTRIES_LIMIT, f"it holds more than {ENTRIES_LIMIT} files"),
        (total_bytes > TOTAL_LIMIT_BYTES, "it would unpack to more than 8 GB"),
        (any(_is_tight(entry) for entry in entries), "a file in it is packed too tightly"),
        (any(entry.flag_bits & _ENCRYPTED for entry in entries), "it is locked with a password"),
    )
    for is_wrong, reason in faults:
        if is_wrong:
            raise UnreadableFileError(name, tried=reason)


def _unpack_entries(
    packed: zipfile.ZipFile, entries: list[zipfile.ZipInfo], folder: Path
) -> BulkPhotos:
    files: dict[str, Path] = {}
    seen = set[str]()
    left_out: list[str] = []
    for number, entry in enumerate(entries):
        name = PurePosixPath(entry.filename.replace("\\", "/")).name
        is_known = not name or plain_name(name) in seen
        if is_known or _is_link(entry) or entry.file_size > FILE_LIMIT_BYTES:
            left_out.append(entry.filename)
            continue
        path = folder / str(number)
        _copy(packed, entry, path)
        seen.add(plain_name(name))
        files[name] = path
    return BulkPhotos(files, tuple(left_out))


def _is_tight(entry: zipfile.ZipInfo) -> bool:
    return entry.file_size / max(entry.compress_size, 1) > RATIO_LIMIT


def _is_link(entry: zipfile.ZipInfo) -> bool:
    return entry.create_system == _UNIX and stat.S_ISLNK(entry.external_attr >> 16)


def _copy(packed: zipfile.ZipFile, entry: zipfile.ZipInfo, path: Path) -> None:
    """Unpack one file, but no more of it than its entry said.

    Raises:
        ValueError: When more comes out than its entry said.
    """
    left_bytes = entry.file_size
    with packed.open(entry) as source, path.open("wb") as target:
        while portion := source.read(_PORTION_BYTES):
            left_bytes -= len(portion)
            if left_bytes < 0:
                message = Sentence("{filename!r} is larger than it says.", filename=entry.filename)
                raise ValueError(message)
            target.write(portion)
