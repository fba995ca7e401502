"""A table before its headings are understood."""

from __future__ import annotations

from dataclasses import dataclass

ROWS_LIMIT = 200_000
COLUMNS_LIMIT = 200


@dataclass(frozen=True, slots=True)
class Line:
    """One row of a table: its number as a spreadsheet counts it, and its cells as text.

    `retyped` holds the indexes of cells that were a number or a date instead of text.
    """

    row: int
    cells: tuple[str, ...]
    retyped: frozenset[int] = frozenset()

    @property
    def is_blank(self) -> bool:
        """Whether no cell holds anything."""
        return not any(cell.strip() for cell in self.cells)


@dataclass(frozen=True, slots=True)
class Table:
    """The rows of one sheet or file that hold anything, headings among them."""

    name: str
    lines: tuple[Line, ...]
