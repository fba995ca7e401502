"""A folder of CSV files or a workbook to a collection."""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Mapping

from service.errors import UnreadableFileError
from service.records.read_containers import read_containers
from service.records.read_museum import read_museum
from service.records.read_objects import read_objects
from service.records.read_packings import read_packings
from service.records.record import Collection, Museum
from service.records.rows.notebook import Notebook
from service.records.sources.columns import (
    CONTAINER_COLUMNS,
    MUSEUM_COLUMNS,
    OBJECT_COLUMNS,
    PACKING_COLUMNS,
    Columns,
)
from service.records.sources.decoding import decode_utf
from service.records.sources.delimited import read_delimited
from service.records.sources.entries import make_row
from service.records.sources.headings import table_rows
from service.records.sources.table import Table
from service.records.sources.workbook import read_sheets

TABLES = {
    "objects": OBJECT_COLUMNS,
    "containers": CONTAINER_COLUMNS,
    "packings": PACKING_COLUMNS,
}
OBJECTS_FILE = "objects.csv"
MUSEUM_FILE = "museum.toml"


def read_tables(files: Mapping[str, bytes]) -> Collection:
    """Read objects.csv and, where given, containers.csv, packings.csv and museum.toml.

    Raises:
        UnreadableFileError: When objects.csv is not there, or a file cannot be read as a whole.
        MissingColumnsError: When a table has no column of numbers.
        TooManyRecordsError: When a table is too long.
    """
    notebook = Notebook()
    tables = {
        table: _read_file(files[name], name=name, columns=TABLES[table], notebook=notebook)
        for table, name in _name_files(files).items()
    }
    museum = _read_museum(files.get(MUSEUM_FILE), notebook=notebook)
    return _collect(tables, museum=museum, notebook=notebook)


def read_workbook(data: bytes, *, name: str, museum: bytes | None = None) -> Collection:
    """Read the sheets objects, containers and packings of an XLSX workbook.

    A workbook without a sheet of these names has its objects on the first one. `museum` is the
    content of museum.toml. The workbook reader can end the whole process on a hostile file, so
    this belongs into a child process with limits.

    Raises:
        UnreadableFileError: When the workbook or the museum file cannot be read as a whole.
        MissingColumnsError: When a sheet has no column of numbers.
        TooManyRecordsError: When a sheet is too long.
    """
    notebook = Notebook()
    tables = read_sheets(data, name=name, wanted=TABLES, notebook=notebook)
    choices = _read_museum(museum, notebook=notebook)
    return _collect(tables, museum=choices, notebook=notebook)


def _name_files(files: Iterable[str]) -> dict[str, str]:
    """Find the file of each table; a lone file of another name holds objects.

    Raises:
        UnreadableFileError: When there are no objects.
    """
    names = list(files)
    named = {table: f"{table}.csv" for table in TABLES if f"{table}.csv" in names}
    lone = [name for name in names if name not in {MUSEUM_FILE, *named.values()}]
    if "objects" in named:
        return named
    if len(lone) == 1:
        return {"objects": lone[0], **named}
    raise UnreadableFileError(OBJECTS_FILE, tried="no file of this name was given")


def _read_file(data: bytes, *, name: str, columns: Columns, notebook: Notebook) -> Table:
    return read_delimited(data, name=name, known=frozenset(columns.by_key()), notebook=notebook)


def _collect(tables: Mapping[str, Table], *, museum: Museum, notebook: Notebook) -> Collection:
    rows = {
        table: table_rows(tables[table], columns, notebook) if table in tables else iter(())
        for table, columns in TABLES.items()
    }
    return Collection(
        museum=museum,
        objects=read_objects(rows["objects"]),
        containers=read_containers(rows["containers"]),
        packings=read_packings(rows["packings"]),
        findings=notebook.findings(),
    )


def _read_museum(data: bytes | None, *, notebook: Notebook) -> Museum:
    if data is None:
        return Museum()
    try:
        values = tomllib.loads(decode_utf(data, name=MUSEUM_FILE))
    except (ValueError, RecursionError) as error:
        raise UnreadableFileError(MUSEUM_FILE, tried=f"it is not TOML ({error})") from error
    row = make_row(values, MUSEUM_COLUMNS, name=MUSEUM_FILE, pointer="", notebook=notebook)
    return read_museum(row)
