"""Which columns a source has for each record, so that a partial export takes nothing away.

A catalogue's export often knows nothing of hazards, weights or care. What it has no column for is
left as the store has it. An empty cell under a heading empties the field, with two exceptions that
must be taken back in words: a recorded hazard ("none") and a restriction ("no").
"""

from __future__ import annotations

from dataclasses import dataclass, field

from service.records.rows.row import Row

Columns = frozenset[str]

_TAKEN_BACK_IN_WORDS = ("hazards", "restricted")

_COLUMNS = {
    "dimensions_text": "dimensions",
    "weight_text": "weight",
    "inner_dimensions": "inner_size",
    "tare": "tare_weight",
    "gross": "gross_weight",
    "hand_height_mm": "hand_height",
    "weight_limit_g": "weight_limit",
}
"""The columns of fields that are called otherwise than their column."""


@dataclass(slots=True)
class SaidColumns:
    """The columns that the source has, by the number of the record; filled while rows are read."""

    by_number: dict[str, Columns] = field(default_factory=dict)
    _alike: dict[Columns, Columns] = field(default_factory=dict, repr=False, compare=False)

    def note(self, number: str, row: Row) -> None:
        """Note what the row of a record says; most rows of a table share one set."""
        silent = {name for name in _TAKEN_BACK_IN_WORDS if not row.values.get(name)}
        columns = frozenset(row.values.keys() - silent)
        self.by_number[number] = self._alike.setdefault(columns, columns)


def is_said(field_name: str, columns: Columns) -> bool:
    """Tell whether a source with these columns says a field of a record."""
    column = _COLUMNS.get(field_name, field_name)
    if column == "questions":
        return any(name.startswith("questions_") for name in columns)
    return column in columns
