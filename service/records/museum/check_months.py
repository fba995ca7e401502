"""How often a museum wants its containers looked at, in months."""

from __future__ import annotations

from dataclasses import dataclass, fields

from service.records.rows.cell import Cell
from service.records.rows.row import Row
from service.sentence import Sentence

LONGEST_MONTHS = 120
"""Ten years: what is asked for less often is no round (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class CheckMonths:
    """After how many months a check is due again; None keeps the usual, 0 never asks for it.

    `textiles` and `natural_history` are for pests where such things lie, `found` for whatever was
    found the last time.
    """

    pests: int | None = None
    tissue: int | None = None
    corrosion: int | None = None
    labels: int | None = None
    weight: int | None = None
    textiles: int | None = None
    natural_history: int | None = None
    found: int | None = None


def read_check_months(row: Row) -> CheckMonths:
    """Read the months of each check; what is not given or cannot be read stays usual."""
    return CheckMonths(
        **{field.name: _read_months(row.cell(f"checks_{field.name}")) for field in _FIELDS}
    )


_FIELDS = fields(CheckMonths)


def _read_months(cell: Cell) -> int | None:
    if not cell.value:
        return None
    if cell.text.isascii() and cell.text.isdigit() and int(cell.text[:9]) <= LONGEST_MONTHS:
        return int(cell.text)
    message = Sentence(
        "Months between checks are a whole number from 0 to {longest_months}.",
        longest_months=LONGEST_MONTHS,
    )
    cell.note("unreadable-count", message)
    return None
