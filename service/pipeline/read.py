"""Reads a source as people hand it over: a folder, one CSV or JSON file, or a workbook."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from service.errors import MissingSourceError, ServiceError, UnreadableFileError
from service.records.read_json import read_json
from service.records.read_tables import read_tables, read_workbook
from service.records.record import Collection
from service.render.worker import Workers

_TABLES = ("objects.csv", "containers.csv", "packings.csv", "museum.toml")
_LIMIT_SECONDS = 120.0
_MOST_BYTES = 64 * 1024 * 1024
"""The largest table or document that is read."""


@dataclass(frozen=True, slots=True)
class Source:
    """The bytes of a source by file name, and where its photos are."""

    files: Mapping[str, bytes]
    photos: Mapping[str, Path]


def open_source(path: Path) -> Source:
    """Read the files of a source; photos are only listed.

    Raises:
        MissingSourceError: When there is nothing to read.
        UnreadableFileError: When a file is too large.
    """
    if path.is_dir():
        names = [name for name in _TABLES if (path / name).is_file()]
        workbooks = sorted(found.name for found in path.glob("*.xlsx"))
        wanted = names if "objects.csv" in names else [*workbooks[:1], *names]
        if not wanted or wanted == ["museum.toml"]:
            raise MissingSourceError(path.name, reason="it holds no objects.csv and no workbook")
        folder = path
    elif path.is_file():
        wanted, folder = [path.name], path.parent
    else:
        raise MissingSourceError(str(path), reason="there is no such file or folder")
    files = {name: _read(folder / name) for name in wanted}
    return Source(files, _list_photos(folder / "photos"))


def _read(path: Path) -> bytes:
    if path.stat().st_size > _MOST_BYTES:
        raise UnreadableFileError(path.name, tried="it is larger than 64 MB")
    return path.read_bytes()


def _list_photos(folder: Path) -> dict[str, Path]:
    if not folder.is_dir():
        return {}
    return {found.name: found for found in sorted(folder.iterdir()) if found.is_file()}


def read_source(files: Mapping[str, bytes], workers: Workers) -> Collection:
    """Read records in a child process with limits.

    Raises:
        RecordsError: When nothing of it can be used.
        JobError: When the reader had to be stopped.
    """
    (answer,) = workers.run(parse_files, [dict(files)], limit_seconds=_LIMIT_SECONDS)
    if isinstance(answer, ServiceError):
        raise answer
    return answer


def parse_files(files: dict[str, bytes]) -> Collection:
    """Read the files of a source by what they are; runs in a child process."""
    for name, data in files.items():
        ending = name.rsplit(".", 1)[-1].casefold()
        if ending == "json":
            return read_json(data, name=name)
        if ending in {"xlsx", "xlsm", "ods"}:
            return read_workbook(data, name=name, museum=files.get("museum.toml"))
    return read_tables(files)
