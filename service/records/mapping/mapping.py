"""A mapping: which heading of a table fills which field, and how the table is written."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from service.records.sources.columns import (
    CONTAINER_COLUMNS,
    OBJECT_COLUMNS,
    PACKING_COLUMNS,
    Columns,
    heading_key,
)
from service.sentence import Sentence

TABLE_COLUMNS: Mapping[str, Columns] = {
    "objects": OBJECT_COLUMNS,
    "containers": CONTAINER_COLUMNS,
    "packings": PACKING_COLUMNS,
}
OBJECTS = "objects"

NEEDED: Mapping[str, tuple[str, ...]] = {
    "objects": ("object_number",),
    "containers": ("container_number",),
    "packings": ("container_number", "object_number"),
}
"""The fields that the rows of a table cannot do without."""

AXES = ("height", "width", "depth", "length", "diameter", "thickness", "circumference")
"""Fields for single measures in columns of their own; together they fill the dimensions."""

_LENGTHS = {*AXES, "dimensions", "lid_size", "end_size", "inner_size", "hand_height"}
_MASSES = {"weight", "tare_weight", "gross_weight", "weight_limit"}
LENGTH_UNITS = ("mm", "cm", "m", "in", "ft")
MASS_UNITS = ("mg", "g", "kg", "oz", "lb")


@dataclass(frozen=True, slots=True)
class ColumnMapping:
    """How one kind of table of one museum is read.

    Attributes:
        table: What its rows are: "objects", "containers" or "packings".
        headings: Each heading that is used, with the field it fills.
        ignored: The headings that are known and not used.
        fixed: Fields that every row has alike, with their value.
        units: Measure columns whose plain numbers are in a unit, by field.
        encoding: How the file is written, such as "windows-1252"; empty where that is found out.
        delimiter: What stands between cells; empty where that is found out.
        sheet: The sheet of a workbook; empty for the one of the table's name, else the first.
        decimal_comma: Whether numbers of measure columns are written as 1.234,5.
    """

    table: str = OBJECTS
    headings: tuple[tuple[str, str], ...] = ()
    ignored: tuple[str, ...] = ()
    fixed: Mapping[str, str] = field(default_factory=dict)
    units: Mapping[str, str] = field(default_factory=dict)
    encoding: str = ""
    delimiter: str = ""
    sheet: str = ""
    decimal_comma: bool = False

    @property
    def heading_set(self) -> frozenset[str]:
        """Every heading it names, reduced: a table with just these is one it was made for."""
        return frozenset(
            heading_key(heading) for heading in (*(h for h, _ in self.headings), *self.ignored)
        )

    @property
    def columns(self) -> Columns:
        """The columns as the readers of tables want them: its own headings and no others."""
        base = TABLE_COLUMNS[self.table]
        return replace(
            base,
            names=(),
            others={},
            own={name: heading for heading, name in self.headings},
            own_stands=Sentence("in the mapping"),
            ignored=frozenset(map(heading_key, self.ignored)),
        )


def fields_of(table: str) -> tuple[str, ...]:
    """Give the fields that headings of a table may fill."""
    names = TABLE_COLUMNS[table].names
    return (*names, *AXES) if table == OBJECTS else names


def units_of(name: str) -> tuple[str, ...]:
    """Give the units that plain numbers of a field may be in; none where it is no measure."""
    if name in _LENGTHS:
        return LENGTH_UNITS
    return MASS_UNITS if name in _MASSES else ()
