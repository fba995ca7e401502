"""Which saved mapping reads a table: the one asked for, else one made for the same headings."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from service.errors import UnreadableFileError
from service.findings import Where
from service.records.mapping.mapping import ColumnMapping
from service.records.rows.notebook import Notebook
from service.records.rows.text import quote_text
from service.records.sources.columns import heading_key
from service.records.sources.delimited import Written, peek_lines
from service.records.sources.headings import LINES_TO_LOOK_AT
from service.records.sources.workbook import choose_sheet, peek_sheets
from service.sentence import Sentence


@dataclass(frozen=True, slots=True)
class Mappings:
    """The mappings that are saved, by name, the latest first; and the one asked for, if any."""

    saved: Mapping[str, ColumnMapping] = field(default_factory=dict)
    wanted: str = ""

    def of_table(self, table: str) -> dict[str, ColumnMapping]:
        """Give those that may read a table: the one asked for alone, where it is of this table."""
        if self.wanted and self.saved[self.wanted].table == table:
            return {self.wanted: self.saved[self.wanted]}
        return {name: one for name, one in self.saved.items() if one.table == table}


NO_MAPPINGS = Mappings()


def written_as(mapping: ColumnMapping) -> Written:
    """Say how a table is written, as far as its mapping tells."""
    return Written(mapping.encoding, mapping.delimiter, frozenset(mapping.columns.by_key()))


def choose_for_file(
    data: bytes, *, name: str, table: str, mappings: Mappings, notebook: Notebook
) -> ColumnMapping | None:
    """Choose the mapping by which a file of delimited text is read, and say so."""
    for said, mapping in mappings.of_table(table).items():
        if said == mappings.wanted or _fits(mapping, _peek(data, name, mapping)):
            return _tell(said, mapping, name, notebook)
    return None


def choose_for_workbook(
    data: bytes, *, name: str, mappings: Mappings, notebook: Notebook
) -> dict[str, ColumnMapping]:
    """Choose the mappings by which the sheets of a workbook are read, by table, and say so.

    Raises:
        UnreadableFileError: When it is no workbook.
        TooManyRecordsError: When a sheet is too long.
    """
    chosen: dict[str, ColumnMapping] = {}
    if not mappings.saved:
        return chosen
    sheets = peek_sheets(data, name=name, lines=LINES_TO_LOOK_AT)
    for said, mapping in mappings.saved.items():
        if mapping.table in chosen or said not in mappings.of_table(mapping.table):
            continue
        sheet = choose_sheet(tuple(sheets), mapping.sheet or mapping.table)
        if said == mappings.wanted or _fits(mapping, sheets.get(sheet, ())):
            chosen[mapping.table] = _tell(said, mapping, name, notebook)
    return chosen


def find_fitting(mappings: Mappings, table: str, headings: Iterable[str]) -> str:
    """Name the saved mapping that was made for these headings of a table; empty where none was."""
    line = tuple(headings)
    fitting = (name for name, one in mappings.of_table(table).items() if _fits(one, [line]))
    return next(fitting, "")


def _peek(data: bytes, name: str, mapping: ColumnMapping) -> Sequence[Sequence[str]]:
    try:
        return peek_lines(data, name=name, written=written_as(mapping), lines=LINES_TO_LOOK_AT)
    except UnreadableFileError:
        return ()


def _fits(mapping: ColumnMapping, lines: Iterable[Sequence[str]]) -> bool:
    wanted = mapping.heading_set
    return any(frozenset(filter(None, map(heading_key, line))) == wanted for line in lines)


def _tell(said: str, mapping: ColumnMapping, file: str, notebook: Notebook) -> ColumnMapping:
    message = Sentence(
        "The {table} were read by the mapping {said}.", table=mapping.table, said=quote_text(said)
    )
    notebook.note("mapping-used", Where(file=file), message)
    return mapping
