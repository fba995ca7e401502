"""A folder of CSV files or a workbook to a collection."""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace

from service.errors import UnreadableFileError
from service.findings import Where
from service.records.mapping.choose import (
    NO_MAPPINGS,
    Mappings,
    choose_for_file,
    choose_for_workbook,
    written_as,
)
from service.records.mapping.mapping import TABLE_COLUMNS as TABLES
from service.records.mapping.mapping import ColumnMapping
from service.records.mapping.rows import map_rows
from service.records.museum import read_hazard_words
from service.records.museum.read import read_museum, read_own_headings
from service.records.museum.read_lifting import GROUP, read_lifting
from service.records.read_containers import read_containers
from service.records.read_objects import read_objects
from service.records.read_packings import read_packings
from service.records.record import Collection, Museum
from service.records.rows.notebook import Notebook
from service.records.rows.row import Row
from service.records.rows.said import SaidColumns
from service.records.sources.columns import MUSEUM_COLUMNS, Columns
from service.records.sources.decoding import decode_utf
from service.records.sources.delimited import Written, read_delimited
from service.records.sources.entries import make_row
from service.records.sources.headings import table_rows
from service.records.sources.table import Table
from service.records.sources.workbook import read_sheets
from service.sentence import Sentence

OBJECTS_FILE = "objects.csv"
MUSEUM_FILE = "museum.toml"
_OWN_COLUMNS = "columns"


@dataclass(frozen=True, slots=True)
class _Choices:
    """What museum.toml says: the museum, and the columns of each table with its own headings.

    Tables that are read by a mapping stand in `mapped`.
    """

    museum: Museum
    columns: Mapping[str, Columns]
    mapped: Mapping[str, ColumnMapping] = field(default_factory=dict)

    def with_mapped(self, mapped: Mapping[str, ColumnMapping]) -> _Choices:
        """Give the choices with the columns of some tables as mappings have them."""
        own = {table: mapping.columns for table, mapping in mapped.items()}
        return replace(self, columns={**self.columns, **own}, mapped=mapped)

    def written(self, table: str) -> Written:
        """Say how a table is written, as far as that is known."""
        if table in self.mapped:
            return written_as(self.mapped[table])
        return Written(known=frozenset(self.columns[table].by_key()))


def read_tables(files: Mapping[str, bytes], mappings: Mappings = NO_MAPPINGS) -> Collection:
    """Read objects.csv and, where given, containers.csv, packings.csv and museum.toml.

    A lone file of another name is a table of objects, or of what the mapping asked for reads.

    Raises:
        UnreadableFileError: When objects.csv is not there, or a file cannot be read as a whole.
        MissingColumnsError: When a table has no column of numbers.
        TooManyRecordsError: When a table is too long.
    """
    notebook = Notebook()
    choices = _read_choices(files.get(MUSEUM_FILE), notebook=notebook)
    named = _name_files(files, mappings)
    found = {
        table: choose_for_file(
            files[name], name=name, table=table, mappings=mappings, notebook=notebook
        )
        for table, name in named.items()
    }
    choices = choices.with_mapped({table: one for table, one in found.items() if one is not None})
    tables = _read_files(files, named, choices, notebook=notebook)
    return _collect(_read_rows(tables, choices, notebook=notebook), choices, notebook=notebook)


def read_beside(
    files: Mapping[str, bytes], read_object_rows: Callable[[Notebook], Iterable[Row]]
) -> Collection:
    """Read containers.csv, packings.csv and museum.toml beside objects that are no table.

    Raises:
        UnreadableFileError: When a file cannot be read as a whole.
        MissingColumnsError: When a table has no column of numbers.
        TooManyRecordsError: When a table is too long.
    """
    notebook = Notebook()
    choices = _read_choices(files.get(MUSEUM_FILE), notebook=notebook)
    named = {table: f"{table}.csv" for table in TABLES if f"{table}.csv" in files}
    tables = _read_files(files, named, choices, notebook=notebook)
    rows = _read_rows(tables, choices, notebook=notebook)
    return _collect({**rows, "objects": read_object_rows(notebook)}, choices, notebook=notebook)


def read_workbook(
    data: bytes, *, name: str, museum: bytes | None = None, mappings: Mappings = NO_MAPPINGS
) -> Collection:
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
    mapped = choose_for_workbook(data, name=name, mappings=mappings, notebook=notebook)
    named = {table: mapping.sheet for table, mapping in mapped.items() if mapping.sheet}
    wanted = sorted(TABLES, key=lambda table: table not in mapped)
    tables = read_sheets(data, name=name, wanted=wanted, named=named, notebook=notebook)
    choices = _read_choices(museum, notebook=notebook).with_mapped(mapped)
    return _collect(_read_rows(tables, choices, notebook=notebook), choices, notebook=notebook)


def _name_files(files: Iterable[str], mappings: Mappings) -> dict[str, str]:
    """Find the file of each table; a lone file of another name holds objects, if not others.

    Raises:
        UnreadableFileError: When there are no objects.
    """
    names = list(files)
    named = {table: f"{table}.csv" for table in TABLES if f"{table}.csv" in names}
    lone = [name for name in names if name not in {MUSEUM_FILE, *named.values()}]
    if "objects" in named:
        return named
    wanted = mappings.saved[mappings.wanted].table if mappings.wanted else "objects"
    if len(lone) == 1 and wanted not in named:
        return {wanted: lone[0], **named}
    if wanted in named:
        return named
    raise UnreadableFileError(OBJECTS_FILE, tried="no file of this name was given")


def _read_files(
    files: Mapping[str, bytes], named: Mapping[str, str], choices: _Choices, *, notebook: Notebook
) -> dict[str, Table]:
    return {
        table: read_delimited(
            files[name],
            name=name,
            written=choices.written(table),
            notebook=notebook,
        )
        for table, name in named.items()
    }


def _read_rows(
    tables: Mapping[str, Table], choices: _Choices, *, notebook: Notebook
) -> dict[str, Iterable[Row]]:
    rows: dict[str, Iterable[Row]] = {}
    for table, columns in choices.columns.items():
        rows[table] = table_rows(tables[table], columns, notebook) if table in tables else ()
        if table in choices.mapped:
            rows[table] = map_rows(rows[table], choices.mapped[table])
    return rows


def _collect(
    rows: Mapping[str, Iterable[Row]], choices: _Choices, *, notebook: Notebook
) -> Collection:
    objects, containers = SaidColumns(), SaidColumns()
    return Collection(
        museum=choices.museum,
        objects=read_objects(rows["objects"], objects),
        containers=read_containers(rows["containers"], containers),
        packings=read_packings(rows["packings"]),
        findings=notebook.findings(),
        said_of_objects=objects.by_number,
        said_of_containers=containers.by_number,
    )


def _read_choices(data: bytes | None, *, notebook: Notebook) -> _Choices:
    if data is None:
        return _Choices(Museum(), TABLES)
    try:
        values = tomllib.loads(decode_utf(data, name=MUSEUM_FILE))
    except (ValueError, RecursionError) as error:
        raise UnreadableFileError(
            MUSEUM_FILE, tried=Sentence("it is not TOML ({error})", error=error)
        ) from error
    own = values.pop(_OWN_COLUMNS, {})
    where = Where(file=MUSEUM_FILE, column=GROUP)
    lifting = read_lifting(values.pop(GROUP, {}), where=where, notebook=notebook)
    where = Where(file=MUSEUM_FILE, column=read_hazard_words.GROUP)
    own_words = values.pop(read_hazard_words.GROUP, {})
    words = read_hazard_words.read_hazard_words(own_words, where=where, notebook=notebook)
    row = make_row(values, MUSEUM_COLUMNS, name=MUSEUM_FILE, pointer="", notebook=notebook)
    museum = read_museum(row, lifting, words)
    return _Choices(museum, _read_own_columns(own, notebook=notebook))


def _read_own_columns(own: object, *, notebook: Notebook) -> Mapping[str, Columns]:
    """Read [columns], which is for objects, and the groups within it for the other tables."""
    if not isinstance(own, dict):
        where = Where(file=MUSEUM_FILE, column=_OWN_COLUMNS)
        notebook.note("wrong-type", where, Sentence("A group of fields should stand here."))
        return TABLES
    groups = {key: group for key, group in own.items() if isinstance(group, dict)}
    plain = {key: heading for key, heading in own.items() if key not in groups}
    for key in groups.keys() - TABLES.keys():
        where = Where(file=MUSEUM_FILE, column=f"{_OWN_COLUMNS}/{key}")
        notebook.note("unknown-column", where, Sentence("The table is not known."))
    groups["objects"] = plain | groups.get("objects", {})
    return {
        table: read_own_headings(
            groups.get(table, {}),
            columns,
            where=Where(file=MUSEUM_FILE, column=_OWN_COLUMNS),
            notebook=notebook,
        )
        for table, columns in TABLES.items()
    }
