"""Pages on sheets, in reading order."""

from __future__ import annotations

from collections.abc import Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from itertools import groupby
from operator import itemgetter

from service.errors import FaceTooLargeError, NoFreePositionError, StartPositionError
from service.geometry import Rect, Size
from service.sheets.marks import CutMark, cut_marks
from service.sheets.stock import Medium, Stock


@dataclass(frozen=True, slots=True)
class Face:
    """What the imposition knows of a page: a key to find it again, and its finished size."""

    key: str
    size: Size


@dataclass(frozen=True, slots=True)
class Placement:
    """One page on a sheet.

    Attributes:
        key: The face's key.
        position: Where it lies, counted from 1 in reading order.
        rect: The page as it lies on the sheet; where it is turned, width and height are exchanged.
        turned_deg: 0, or 90 clockwise: the page's top then looks to the right.
    """

    key: str
    position: int
    rect: Rect
    turned_deg: int


@dataclass(frozen=True, slots=True)
class Sheet:
    """One sheet: its stock, its number from 1, the pages on it and where to cut."""

    stock: Stock
    number: int
    placements: tuple[Placement, ...]
    marks: tuple[CutMark, ...]


def impose_pages(
    pages: Sequence[Face],
    stock: Stock,
    *,
    start_position: int = 1,
    skipped: AbstractSet[int] = frozenset(),
    copies: int = 1,
) -> tuple[Sheet, ...]:
    """Put pages on sheets in reading order, the first at `start_position` (1-based).

    The first sheet may be part used: `start_position` and the `skipped` positions are about it
    alone. Copies of a page lie side by side. A page smaller than its position is centred in it and
    turned only when it would not fit otherwise.

    Raises:
        StartPositionError: When a position named is not on the sheet.
        NoFreePositionError: When nothing is free on the first sheet.
        FaceTooLargeError: When a page fits neither way.
        ValueError: When `copies` is below 1.
    """
    free = _free_positions(stock, start_position, skipped)
    if copies < 1:
        msg = "copies must be 1 or more"
        raise ValueError(msg)
    wanted = [face for face in pages for _ in range(copies)]
    placed = []
    for index, face in enumerate(wanted):
        number, position = _spot(index, stock, free)
        placed.append((number, _place(face, stock, position)))
    return tuple(
        _sheet(stock, number, tuple(placement for _, placement in group))
        for number, group in groupby(placed, key=itemgetter(0))
    )


def _free_positions(stock: Stock, start_position: int, skipped: AbstractSet[int]) -> list[int]:
    """List what is free on the first sheet.

    Raises:
        StartPositionError: When a position named is not on the sheet.
        NoFreePositionError: When nothing is free.
    """
    for position in (start_position, *sorted(skipped)):
        if not 1 <= position <= stock.positions:
            raise StartPositionError(position, positions=stock.positions)
    free = [n for n in range(start_position, stock.positions + 1) if n not in skipped]
    if not free:
        raise NoFreePositionError(start_position, positions=stock.positions)
    return free


def _spot(index: int, stock: Stock, free: Sequence[int]) -> tuple[int, int]:
    """Give sheet number and position: the first sheet's free ones, then every one."""
    if index < len(free):
        return 1, free[index]
    further_sheets, positions_before = divmod(index - len(free), stock.positions)
    return 2 + further_sheets, 1 + positions_before


def _place(face: Face, stock: Stock, position: int) -> Placement:
    turned_deg = stock.turn_for(face.size)
    if turned_deg is None:
        size_mm = (face.size.width_mm, face.size.height_mm)
        raise FaceTooLargeError(face.key, face_mm=size_mm, stock=stock.name)
    size = face.size if turned_deg == 0 else face.size.turned
    return Placement(
        face.key, position, _centred_in(stock.position_rect(position), size), turned_deg
    )


def _centred_in(around: Rect, size: Size) -> Rect:
    return Rect(
        around.x_mm + (around.width_mm - size.width_mm) / 2,
        around.y_mm + (around.height_mm - size.height_mm) / 2,
        size.width_mm,
        size.height_mm,
    )


def _sheet(stock: Stock, number: int, placements: tuple[Placement, ...]) -> Sheet:
    """Finish a sheet; only card is cut by hand, labels come apart by themselves."""
    cards = [placement.rect for placement in placements]
    is_cut = stock.medium is Medium.CARD
    marks = cut_marks(cards, printable=stock.printable_rect()) if is_cut else ()
    return Sheet(stock, number, placements, marks)
