"""Rows to packings: one row a place, the rows of a container together one packing."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from service.records.cells.dates import read_date
from service.records.cells.parts import read_marks
from service.records.cells.words import read_compartment, read_count
from service.records.record import PackingRecord, PlaceRecord
from service.records.rows.numbering import read_number
from service.records.rows.row import Row
from service.records.rows.text import quote_text
from service.sentence import Sentence

_SHARED = ("revision", "packed_by", "packed_on", "reason")
_OF_A_PLACE = ("parts", "layer", "compartment", "note")


def read_packings(rows: Iterable[Row]) -> tuple[PackingRecord, ...]:
    """Read packings in the order in which their containers first appear, places in row order."""
    grouped: dict[str, list[Row]] = {}
    for row in rows:
        number = read_number(row, "container_number")
        if number:
            grouped.setdefault(number, []).append(row.about(container_number=number))
        else:
            row.cell("container_number").note(
                "row-without-number", Sentence("The row names no container.")
            )
    return tuple(_read_packing(group) for group in grouped.values())


def _read_packing(rows: list[Row]) -> PackingRecord:
    first = rows[0]
    for column in _SHARED:
        _note_disagreement(rows, column)
    places = (_read_place(row) for row in rows)
    return PackingRecord(
        container_number=first.where.container_number,
        revision=read_count(first.cell("revision")) or PackingRecord("").revision,
        places=tuple(place for place in places if place is not None),
        packed_by=first.text("packed_by"),
        packed_on=read_date(first.cell("packed_on")),
        reason=first.text("reason"),
    )


def _note_disagreement(rows: list[Row], column: str) -> None:
    """Note the first row that says something else than the first; an empty cell says the same."""
    said = rows[0].text(column)
    for row in rows[1:]:
        cell = row.cell(column)
        if cell.text and cell.text != said:
            cell.note(
                "packing-disagrees",
                Sentence(
                    "The row says {text}, the first row of the container {said}.",
                    text=quote_text(cell.text),
                    said=quote_text(said),
                ),
            )
            return


def _read_place(row: Row) -> PlaceRecord | None:
    number = read_number(row, "object_number")
    if not number:
        # A container that is recorded as empty has a row without any place.
        if any(row.values.get(column) for column in _OF_A_PLACE):
            row.cell("object_number").note(
                "row-without-number", Sentence("The place names no object.")
            )
        return None
    row = row.about(object_number=number)
    place = PlaceRecord(
        object_number=number,
        parts=read_marks(row.list_cell("parts")),
        compartment=read_compartment(row.cell("compartment")),
        note=row.text("note"),
    )
    layer = read_count(row.cell("layer"), finding="unreadable-place")
    return place if layer is None else replace(place, layer=layer)
