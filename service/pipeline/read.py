"""Reads a source as people hand it over: a folder, a table, a document, an export."""

from __future__ import annotations

import zipfile
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import TypeAlias

from service.errors import (
    MissingSourceError,
    ServiceError,
    UnreadableFileError,
    UnusableMappingError,
)
from service.records.darwin.read import read_darwin
from service.records.darwin.rows import META_FILE
from service.records.mapping.choose import NO_MAPPINGS, Mappings
from service.records.mapping.mapping import ColumnMapping
from service.records.mapping.sample import Sample, read_sample
from service.records.naturally import sort_naturally
from service.records.read_json import read_json
from service.records.read_lido import read_lido
from service.records.read_tables import read_tables, read_workbook
from service.records.record import Collection
from service.render.worker import Workers
from service.sentence import Sentence

_TABLES = ("objects.csv", "containers.csv", "packings.csv", "museum.toml")
_LIMIT_SECONDS = 120.0
_MOST_BYTES = 64 * 1024 * 1024
"""The largest table or document that is read."""
_MOST_BYTES_OF_LIDO = 2 * 1024 * 1024 * 1024
_CHUNK_BYTES = 1024 * 1024

Content: TypeAlias = bytes | Path
"""The bytes of a file, or where they are: a LIDO file is read as a stream."""


@dataclass(frozen=True, slots=True)
class Source:
    """The content of a source by file name, and where its photos are."""

    files: Mapping[str, Content]
    photos: Mapping[str, Path]


def open_source(path: Path) -> Source:
    """Read the files of a source; photos are only listed.

    Raises:
        MissingSourceError: When there is nothing to read.
        UnreadableFileError: When a file is too large.
    """
    if path.is_dir():
        wanted, folder = _choose_files(path), path
    elif path.is_file():
        wanted, folder = [path.name], path.parent
    else:
        raise MissingSourceError(str(path), reason="there is no such file or folder")
    files = {name: _read(folder / name) for name in wanted}
    return Source(files, _list_photos(folder / "photos"))


def _choose_files(folder: Path) -> list[str]:
    """Name the files to read: objects from a CSV table, else a workbook, else an export.

    Raises:
        MissingSourceError: When there is none of them.
    """
    tables = [name for name in _TABLES if (folder / name).is_file()]
    workbooks = sorted(found.name for found in folder.glob("*.xlsx"))
    exports = [found.name for found in folder.iterdir() if found.is_file() and _is_lido(found.name)]
    if "objects.csv" in tables:
        return tables
    archives = sorted(found.name for found in folder.glob("*.zip") if _is_archive(found))
    exports = sort_naturally(exports, number=str) or archives[:1]
    chosen = [*(workbooks[:1] or exports), *tables]
    if not chosen or chosen == ["museum.toml"]:
        reason = Sentence(
            "it holds no objects.csv, no workbook, no LIDO file and no Darwin Core Archive"
        )
        raise MissingSourceError(folder.name, reason=reason)
    return chosen


def _is_lido(name: str) -> bool:
    # Some systems leave a hidden twin beside a file, which is none of ours.
    return name.casefold().endswith(".xml") and not name.startswith(".")


def _is_archive(path: Path) -> bool:
    """Tell an archive of records from a packed folder of photos."""
    try:
        with zipfile.ZipFile(path) as folder:
            return META_FILE in folder.namelist()
    except (zipfile.BadZipFile, NotImplementedError, OSError, ValueError):
        return False


def _read(path: Path) -> Content:
    most_bytes = _MOST_BYTES_OF_LIDO if _is_lido(path.name) else _MOST_BYTES
    if path.stat().st_size > most_bytes:
        raise UnreadableFileError(
            path.name,
            tried=Sentence("it is larger than {most_bytes} MB", most_bytes=most_bytes >> 20),
        )
    return path if _is_lido(path.name) else path.read_bytes()


def _list_photos(folder: Path) -> dict[str, Path]:
    if not folder.is_dir():
        return {}
    return {found.name: found for found in sorted(folder.iterdir()) if found.is_file()}


@dataclass(frozen=True, slots=True)
class _Table:
    """A file to look into: its name and bytes, what is known of it, and the saved mappings."""

    name: str
    data: bytes
    like: ColumnMapping
    mappings: Mappings


def read_source(
    files: Mapping[str, Content], workers: Workers, mappings: Mappings = NO_MAPPINGS
) -> Collection:
    """Read records in a child process with limits, tables by a mapping where one fits.

    Raises:
        RecordsError: When nothing of it can be used.
        JobError: When the reader had to be stopped.
    """
    job = partial(parse_files, mappings=mappings)
    (answer,) = workers.run(job, [dict(files)], limit_seconds=_LIMIT_SECONDS)
    if isinstance(answer, ServiceError):
        raise answer
    return answer


def sample_file(
    name: str, data: bytes, workers: Workers, *, like: ColumnMapping, mappings: Mappings
) -> Sample:
    """Look into a file in a child process with limits: its headings, and what they may mean.

    Raises:
        RecordsError: When nothing of it can be used.
        JobError: When the reader had to be stopped.
    """
    job = _Table(name, data, like, mappings)
    (answer,) = workers.run(_sample, [job], limit_seconds=_LIMIT_SECONDS)
    if isinstance(answer, ServiceError):
        raise answer
    return answer


def _sample(job: _Table) -> Sample:
    return read_sample(job.data, name=job.name, like=job.like, mappings=job.mappings)


def parse_files(files: dict[str, Content], mappings: Mappings = NO_MAPPINGS) -> Collection:
    """Read the files of a source by what they are; runs in a child process.

    Raises:
        UnusableMappingError: When a mapping was asked for and nothing is a table.
    """
    exports = {name: _stream(content) for name, content in files.items() if _is_lido(name)}
    whole = {name: data for name, data in files.items() if isinstance(data, bytes)}
    endings = {name: name.rsplit(".", 1)[-1].casefold() for name in whole}
    if mappings.wanted and (exports or not {"json", "zip"}.isdisjoint(endings.values())):
        reason = Sentence("The source is no table: it says itself what its fields are.")
        raise UnusableMappingError(mappings.wanted, reasons=[reason])
    if exports:
        return read_lido(exports, whole)
    for name, data in whole.items():
        ending = endings[name]
        if ending == "json":
            return read_json(data, name=name)
        if ending == "zip":
            return read_darwin(data, name=name, beside=whole)
        if ending in {"xlsx", "xlsm", "ods"}:
            museum = whole.get("museum.toml")
            return read_workbook(data, name=name, museum=museum, mappings=mappings)
    return read_tables(whole, mappings)


def _stream(content: Content) -> Iterator[bytes]:
    if isinstance(content, bytes):
        yield content
        return
    with content.open("rb") as stream:
        while chunk := stream.read(_CHUNK_BYTES):
            yield chunk
