"""Rows to object records."""

from __future__ import annotations

import re
from collections.abc import Iterable

from service.records.cells.dimensions import read_dimensions
from service.records.cells.hazards import read_hazards
from service.records.cells.parts import read_parts
from service.records.cells.photos import read_photos
from service.records.cells.weights import read_weight
from service.records.cells.words import read_codes, read_count, read_yes_or_no
from service.records.codes import CAUTION_CODES, HANG_FACTOR_CODES
from service.records.record import ObjectRecord
from service.records.rows.cell import Cell
from service.records.rows.numbering import unique_rows
from service.records.rows.row import Row
from service.records.rows.said import SaidColumns
from service.records.rows.text import quote_text
from service.sentence import Sentence

ADDRESS = re.compile(r"https://[^\s/@\\]+(?:/\S*)?", re.IGNORECASE)
"""What a symbol may send a phone to; no other link is printed."""


def read_objects(rows: Iterable[Row], said: SaidColumns | None = None) -> tuple[ObjectRecord, ...]:
    """Read every object that has a number of its own, in the order of the rows.

    `said` is told which columns each of them has.
    """
    numbered = unique_rows(rows, "object_number", said)
    return tuple(_read_object(row.about(object_number=number)) for number, row in numbered)


def _read_object(row: Row) -> ObjectRecord:
    return ObjectRecord(
        object_number=row.where.object_number,
        title=row.text("title"),
        object_name=row.text("object_name"),
        period=row.cell("period").value,
        number_of_parts=read_count(row.cell("number_of_parts")),
        parts=read_parts(row.list_cell("parts")),
        accessories=row.list_cell("accessories").texts(),
        materials=row.list_cell("materials").texts(),
        dimensions=read_dimensions(row.list_cell("dimensions")),
        dimensions_text=row.cell("dimensions").value,
        weight=read_weight(row.cell("weight")),
        weight_text=row.cell("weight").value,
        condition=row.text("condition"),
        handling_notes=row.text("handling_notes"),
        hazards=read_hazards(row.list_cell("hazards")),
        cautions=read_codes(row.list_cell("cautions"), CAUTION_CODES, finding="unknown-caution"),
        hang_factors=read_codes(
            row.list_cell("hang_factors"), HANG_FACTOR_CODES, finding="unknown-hang-factor"
        ),
        former_numbers=row.list_cell("former_numbers").texts(),
        photos=read_photos(row.list_cell("photos")),
        catalogue_url=_read_address(row.cell("catalogue_url")),
        # Where the cell cannot be read, hiding too much is the smaller mistake.
        restricted=read_yes_or_no(row.cell("restricted"), empty=False, unclear=True),
        source=row.source,
    )


def _read_address(cell: Cell) -> str:
    if not cell.value or ADDRESS.fullmatch(cell.text):
        return cell.value
    cell.note(
        "unusable-address", Sentence("{text} is not an https address.", text=quote_text(cell.text))
    )
    return ""
