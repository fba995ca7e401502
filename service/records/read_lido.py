"""LIDO files, with the tables beside them, to a collection."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from service.errors import TooManyRecordsError
from service.records.lido.rows import read_rows
from service.records.read_tables import read_beside
from service.records.record import Collection
from service.records.rows.notebook import Notebook
from service.records.rows.row import Row
from service.records.sources.table import ROWS_LIMIT


def read_lido(
    exports: Mapping[str, Iterable[bytes]], beside: Mapping[str, bytes] | None = None
) -> Collection:
    """Read the objects of LIDO files, given in pieces of any length, one file after the other.

    `beside` are the files that LIDO has no words for: containers.csv, packings.csv, museum.toml.

    Raises:
        UnreadableFileError: When a file cannot be read as a whole.
        MissingColumnsError: When a table beside has no column of numbers.
        TooManyRecordsError: When there are too many records.
    """
    return read_beside(beside or {}, lambda notebook: _read_all(exports, notebook))


def _read_all(exports: Mapping[str, Iterable[bytes]], notebook: Notebook) -> Iterator[Row]:
    count = 0
    for name, chunks in exports.items():
        for row in read_rows(chunks, name=name, notebook=notebook):
            count += 1
            if count > ROWS_LIMIT:
                raise TooManyRecordsError(name, count=count, limit=ROWS_LIMIT)
            yield row
