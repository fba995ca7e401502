"""Sizes and single lengths of containers: `400 x 300 mm`, `900 mm`."""

from __future__ import annotations

from service.geometry import Size
from service.records.cells.dimensions import is_possible, parse_dimensions
from service.records.rows.cell import Cell
from service.records.rows.text import quote_text
from service.sentence import Sentence


def read_size(cell: Cell) -> Size | None:
    """Read a width and a height, in this order where they are not labelled."""
    if not cell.value:
        return None
    dimensions = parse_dimensions(cell.value)
    lengths = {item.label: item.length_mm for item in dimensions.measures if is_possible(item)}
    plain = [item.length_mm for item in dimensions.measures if is_possible(item)]
    if not dimensions.unread and {"width", "height"} <= lengths.keys():
        return Size(lengths["width"], lengths["height"])
    if dimensions.unread or set(lengths) != {""} or len(plain) != len(("width", "height")):
        message = Sentence(
            "{text} is not a width and a height; it was left out.", text=quote_text(cell.text)
        )
        cell.note(
            "unreadable-dimensions",
            message,
            advice=Sentence("Write width x height, for instance: 400 x 300 mm."),
        )
        return None
    return Size(plain[0], plain[1])


def read_length_mm(cell: Cell) -> float | None:
    """Read a single length in mm."""
    if not cell.value:
        return None
    dimensions = parse_dimensions(cell.value)
    possible = [item.length_mm for item in dimensions.measures if is_possible(item)]
    if dimensions.unread or len(possible) != 1:
        message = Sentence("{text} is not one length; it was left out.", text=quote_text(cell.text))
        advice = Sentence("Write one length with its unit, for instance: 900 mm.")
        cell.note("unreadable-dimensions", message, advice=advice)
        return None
    return possible[0]
