"""The table of marks: what each drawing says, its family, where its form comes from, its status."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass, fields
from enum import StrEnum

OWN = "own"
"""The geometry of a mark whose form follows no published family."""


class Family(StrEnum):
    """The outer form that a mark shares with others of its kind."""

    WARNING = "warning"
    PROHIBITION = "prohibition"
    MANDATORY = "mandatory"
    HANDLING = "handling"
    PANEL = "panel"
    CHEMICAL = "chemical"


class Status(StrEnum):
    """Whether people of a store have read a mark at 8 mm without its words."""

    DRAFT = "draft"
    READ = "read"


@dataclass(frozen=True, slots=True)
class Pictogram:
    """One row of the table.

    Attributes:
        code: Names the drawing, `code.svg`.
        words: The label printed beside it.
        meaning: What it says, in one sentence.
        family: Its outer form.
        geometry: The published family its form follows, or `OWN`.
        status: Whether it has been read by people of a store.
    """

    code: str
    words: str
    meaning: str
    family: Family
    geometry: str
    status: Status


_COLUMNS = frozenset(field.name for field in fields(Pictogram))


def read_pictograms(text: str) -> tuple[Pictogram, ...]:
    """Read the table from TOML, in its order.

    Raises:
        ValueError: When a row lacks something, has too much, or stands twice; the table is our own.
    """
    rows = tomllib.loads(text)["mark"]
    pictograms = tuple(_read_row(row) for row in rows)
    codes = [pictogram.code for pictogram in pictograms]
    for code in codes:
        if codes.count(code) > 1:
            message = f"{code}: it stands twice"
            raise ValueError(message)
    return pictograms


def _read_row(row: dict[str, str]) -> Pictogram:
    """Read one row.

    Raises:
        ValueError: When it has not exactly the columns of the table, or an unknown word in them.
    """
    if row.keys() != _COLUMNS:
        named = ", ".join(sorted(row.keys() ^ _COLUMNS))
        message = f"{row.get('code', 'a mark')}: it lacks, or has too much of: {named}"
        raise ValueError(message)
    return Pictogram(
        row["code"],
        row["words"],
        row["meaning"],
        Family(row["family"]),
        row["geometry"],
        Status(row["status"]),
    )
