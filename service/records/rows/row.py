"""One row of a table, or one object of a document, before it is understood."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import TypeAlias

from service.findings import Where
from service.records.rows.cell import Cell, Item
from service.records.rows.notebook import Notebook
from service.records.rows.text import has_unseen, quote_text, tidy_text
from service.sentence import Sentence

Value: TypeAlias = str | tuple[Item, ...]

CELL_LIMIT = 32_767
"""Characters of a cell, as spreadsheets have it (the published limit of the XLSX format)."""


@dataclass(frozen=True, slots=True)
class Row:
    """Raw values by column name.

    `headings` gives the words to name a column by, `source` the row as it came, and `retyped` the
    columns that held a number or a date instead of text.
    """

    values: Mapping[str, Value]
    headings: Mapping[str, str]
    where: Where
    notebook: Notebook
    source: Mapping[str, str]
    retyped: frozenset[str] = frozenset()

    def about(self, *, object_number: str = "", container_number: str = "") -> Row:
        """Give the same row with the number that findings shall name."""
        where = replace(
            self.where,
            object_number=object_number or self.where.object_number,
            container_number=container_number or self.where.container_number,
        )
        return replace(self, where=where)

    def cell(self, column: str) -> Cell:
        """Give a cell with its text cleaned; line breaks become blanks."""
        return self._cell(column, line_break=" ")

    def list_cell(self, column: str) -> Cell:
        """Give a cell whose line breaks part items, as a semicolon does."""
        return self._cell(column, line_break="; ")

    def text(self, column: str) -> str:
        """Give the cleaned text of a column."""
        return self.cell(column).text

    def _cell(self, column: str, *, line_break: str) -> Cell:
        value = self.values.get(column, "")
        name = self.headings.get(column, column)
        if isinstance(value, str) and _is_plain(value):
            # Nearly every cell ends here, and a table has a million of them.
            return Cell(value.strip(), self.where, name, self.notebook)
        cell = Cell("", self.where, name, self.notebook)
        if isinstance(value, str):
            return replace(cell, text=_clean(value, cell, line_break=line_break))
        return replace(cell, listed=tuple(_clean_item(item, cell) for item in value))


def _is_plain(text: str) -> bool:
    return text.isascii() and text.isprintable() and len(text) <= CELL_LIMIT


def _clean(text: str, cell: Cell, *, line_break: str = " ") -> str:
    if _is_plain(text):
        return text.strip()
    if has_unseen(text):
        cell.note("control-characters", Sentence("The cell holds characters that cannot be seen."))
    if "\N{REPLACEMENT CHARACTER}" in text:
        cell.note(
            "unreadable-characters",
            Sentence(
                "A character was lost before the file came here: {text}.", text=quote_text(text)
            ),
        )
    if len(text) > CELL_LIMIT:
        cell.note(
            "text-too-long",
            Sentence(
                "The text has {text} characters; {cell_limit} were kept.",
                text=len(text),
                cell_limit=CELL_LIMIT,
            ),
        )
    return tidy_text(text[:CELL_LIMIT], line_break=line_break)


def _clean_item(item: Item, cell: Cell) -> Item:
    if isinstance(item, str):
        return _clean(item, cell)
    return {key: _clean(text, cell) for key, text in item.items()}
