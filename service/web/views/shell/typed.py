"""Reads what was typed into forms with the readers of spreadsheets: one way to write a measure."""

from __future__ import annotations

from collections.abc import Mapping

from service.records.rows.notebook import Notebook
from service.records.rows.row import Row
from service.records.sources.columns import Columns
from service.records.sources.entries import make_row
from service.web.views.language.telling import tell_finding

_HARMLESS = frozenset(("number-like-object-number", "control-characters"))
"""What a spreadsheet may have done to a cell, and nobody does to a form."""


def make_typed_row(values: Mapping[str, str], columns: Columns) -> tuple[Row, Notebook]:
    """Make a row of those fields that the columns have, and the notebook its readers write in."""
    notebook = Notebook()
    known = {name: text for name, text in values.items() if name in columns.names}
    row = make_row(known, columns, name="", pointer="", notebook=notebook)
    return row, notebook


def tell_faults(notebook: Notebook) -> dict[str, str]:
    """Tell what was not understood, by field; of several faults of a field the first."""
    faults: dict[str, str] = {}
    for finding in notebook.findings():
        if finding.code not in _HARMLESS:
            faults.setdefault(finding.where.column, tell_finding(finding))
    return faults
