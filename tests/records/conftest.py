from __future__ import annotations

from collections.abc import Callable

import pytest

from service.findings import Where
from service.records.rows.cell import Cell
from service.records.rows.notebook import Notebook
from service.records.rows.row import Row, Value


@pytest.fixture
def make_cell() -> Callable[[str], Cell]:
    """Give a maker of cells, each with a notebook of its own."""

    def make(text: str) -> Cell:
        return Cell(text, Where(file="objects.csv", row=2), "some column", Notebook())

    return make


@pytest.fixture
def make_row() -> Callable[..., Row]:
    """Give a maker of rows from column=value pairs, each with a notebook of its own."""

    def make(**values: Value) -> Row:
        headings = {column: column for column in values}
        return Row(values, headings, Where(file="objects.csv", row=2), Notebook(), source={})

    return make
