"""Rows of a mapped table: what is fixed is filled in, and measures get their units."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace

from service.records.cells.dimensions import parse_dimensions
from service.records.cells.weights import parse_weight
from service.records.mapping.mapping import AXES, LENGTH_UNITS, ColumnMapping, units_of
from service.records.rows.row import Row, Value

_THOUSANDS = re.compile(r"(?<![\d.,])\d{1,3}(?:\.\d{3})+(?![\d.])")
_DECIMAL = re.compile(r"(?<=\d),(?=\d)")


def map_rows(rows: Iterable[Row], mapping: ColumnMapping) -> Iterator[Row]:
    """Give the rows as our own table would have them; the source rows stay as they came."""
    for row in rows:
        values: dict[str, Value] = {**mapping.fixed, **row.values}
        for name, value in values.items():
            if isinstance(value, str) and units_of(name):
                values[name] = _write_measure(value, name, mapping)
        yield replace(row, values=_join_axes(values))


def _write_measure(text: str, name: str, mapping: ColumnMapping) -> str:
    if mapping.decimal_comma:
        text = _DECIMAL.sub(".", _THOUSANDS.sub(lambda found: found[0].replace(".", ""), text))
    unit = mapping.units.get(name)
    return text if unit is None else _with_unit(text, unit)


def _with_unit(text: str, unit: str) -> str:
    """Add a unit where the text says nothing without it and something with it."""
    whole = f"{text.strip()} {unit}"
    if unit in LENGTH_UNITS:
        needs_it = not parse_dimensions(text).measures and bool(parse_dimensions(whole).measures)
    else:
        needs_it = parse_weight(text) is None and parse_weight(whole) is not None
    return whole if needs_it else text


def _join_axes(values: dict[str, Value]) -> dict[str, Value]:
    """Write single measures as one text of dimensions; a column for them is one that says them."""
    axes = {name: values.pop(name) for name in AXES if name in values}
    if axes:
        said = (
            f"{name} {value.strip()}"
            for name, value in axes.items()
            if isinstance(value, str) and value.strip()
        )
        values["dimensions"] = "; ".join(said)
    return values
