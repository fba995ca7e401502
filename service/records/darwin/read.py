"""A Darwin Core Archive, with the tables beside it, to a collection."""

from __future__ import annotations

from collections.abc import Mapping

from service.records.darwin.rows import read_rows
from service.records.read_tables import read_beside
from service.records.record import Collection


def read_darwin(data: bytes, *, name: str, beside: Mapping[str, bytes] | None = None) -> Collection:
    """Read the objects of an archive.

    `beside` are the files that Darwin Core has no words for: containers.csv, packings.csv,
    museum.toml.

    Raises:
        UnreadableFileError: When a file cannot be read as a whole.
        MissingColumnsError: When a table beside has no column of numbers.
        TooManyRecordsError: When a table is too long.
    """
    return read_beside(beside or {}, lambda notebook: read_rows(data, name=name, notebook=notebook))
