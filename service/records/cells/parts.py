"""Parts: `a: lid; b: base`, `a-c`, or names without a mark."""

from __future__ import annotations

import re

from service.records.record import Part
from service.records.rows.cell import Cell, Item

_RANGE = re.compile(
    r"([a-z])\s*[-\u2013—]\s*([a-z])|([0-9]{1,2})\s*[-\u2013—]\s*([0-9]{1,2})", re.IGNORECASE
)
_MARK = re.compile(r"[^\W\d_]|[0-9]{1,3}")


def expand_marks(text: str) -> tuple[str, ...]:
    """Give the marks a range names, both ends included: `a-c` is a, b and c.

    Anything but a rising range of single letters or small numbers is one mark as written.
    """
    match = _RANGE.fullmatch(text)
    if match is None:
        return (text,)
    if match[1]:
        marks = tuple(chr(code) for code in range(ord(match[1]), ord(match[2]) + 1))
        return marks if all(mark.isalpha() for mark in marks) and marks else (text,)
    return tuple(str(mark) for mark in range(int(match[3]), int(match[4]) + 1)) or (text,)


def read_parts(cell: Cell) -> tuple[Part, ...]:
    """Read the parts of an object; a part without a mark has only its name."""
    if cell.listed is None and not cell.value:
        return ()
    return tuple(part for item in cell.items() for part in _parts_of(item))


def read_marks(cell: Cell) -> tuple[str, ...]:
    """Read which parts lie in a place: marks, ranges or names, divided by `;` or `,`."""
    if cell.listed is None and not cell.value:
        return ()
    pieces = (piece.strip() for item in cell.texts() for piece in item.split(","))
    return tuple(mark for piece in pieces if piece for mark in expand_marks(piece))


def _parts_of(item: Item) -> tuple[Part, ...]:
    if not isinstance(item, str):
        return (Part(item.get("mark", ""), item.get("name", "")),)
    mark, colon, name = (piece.strip() for piece in item.partition(":"))
    if colon and mark:
        return tuple(Part(each, name) for each in expand_marks(mark))
    if _RANGE.fullmatch(item) or _MARK.fullmatch(item):
        return tuple(Part(each) for each in expand_marks(item))
    return (Part("", item),)
