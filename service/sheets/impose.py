"""Pages on sheets, in reading order."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from itertools import count

from service.errors import (
    FaceTooLargeError,
    NoFreePositionError,
    NoReachError,
    StartPositionError,
)
from service.geometry import Insets, Rect, Size
from service.pages.look import NEAREST_EDGE_MM
from service.sheets.correction import NO_CORRECTION, Correction
from service.sheets.marks import CutMark, cut_marks
from service.sheets.printers.printer import ANY_PRINTER, PrinterSetup
from service.sheets.stock import Medium, Stock


@dataclass(frozen=True, slots=True)
class Face:
    """What the imposition knows of a page: a key to find it again, and its finished size.

    `ink` is how far its ink reaches on the page; None where nobody looked yet.
    """

    key: str
    size: Size
    ink: Rect | None = None


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
    """One sheet: its stock, its number from 1, the pages on it and where to cut.

    All places are where ink shall lie on the paper.

    Attributes:
        stock: The kind of sheet.
        number: Counted from 1.
        placements: The pages, in reading order.
        marks: Where to cut.
        correction: Where the printer must be sent for ink to lie where it shall.
        edges: What the printer leaves white; None for what is usual for the stock.
        passed_over: Free positions left empty because the printer does not reach them.
    """

    stock: Stock
    number: int
    placements: tuple[Placement, ...]
    marks: tuple[CutMark, ...]
    correction: Correction = NO_CORRECTION
    edges: Insets | None = None
    passed_over: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class _Spot:
    """A position that may be filled."""

    sheet: int
    position: int


def impose_pages(  # noqa: PLR0913 - each but the first two is named, and most calls name none
    pages: Sequence[Face],
    stock: Stock,
    *,
    start_position: int = 1,
    skipped: AbstractSet[int] = frozenset(),
    copies: int = 1,
    printer: PrinterSetup = ANY_PRINTER,
) -> tuple[Sheet, ...]:
    """Put pages on sheets in reading order, the first at `start_position` (1-based).

    The first sheet may be part used: `start_position` and the `skipped` positions are about it
    alone. Copies of a page lie side by side. A page smaller than its position is centred in it and
    turned only when it would not fit otherwise. A position where the printer cannot ink a page is
    left empty, and a part-used sheet with no other is left out.

    Raises:
        StartPositionError: When a position named is not on the sheet.
        NoFreePositionError: When nothing is free on the first sheet.
        FaceTooLargeError: When a page fits neither way.
        NoReachError: When the printer can ink a page on no position.
        ValueError: When `copies` is below 1.
    """
    free = _free_positions(stock, start_position, skipped)
    if copies < 1:
        msg = "copies must be 1 or more"
        raise ValueError(msg)
    imposing = _Imposing(stock, printer, _spots(stock, free))
    for face in pages:
        for _ in range(copies):
            imposing.place(face)
    return imposing.sheets()


class _Imposing:
    """Sheets that are being filled."""

    def __init__(self, stock: Stock, printer: PrinterSetup, spots: Iterator[_Spot]) -> None:
        self._stock = stock
        self._printer = printer
        self._spots = spots
        self._reach = printer.reach_on(stock)
        self._placed: dict[int, list[Placement]] = {}
        self._passed_over: dict[int, list[int]] = {}

    def place(self, face: Face) -> None:
        """Put a page on the next position where the printer can ink it.

        Raises:
            FaceTooLargeError: When the page fits neither way.
            NoReachError: When a whole sheet has no such position.
        """
        # A part-used sheet and a fresh one hold every position there is.
        for _ in range(2 * self._stock.positions):
            spot = next(self._spots)
            placement = _place(face, self._stock, spot.position)
            if self._reach.holds(_inked(face, placement)):
                self._placed.setdefault(spot.sheet, []).append(placement)
                return
            self._passed_over.setdefault(spot.sheet, []).append(spot.position)
        raise NoReachError(self._stock.name)

    def sheets(self) -> tuple[Sheet, ...]:
        """Finish the sheets that hold a page; only card is cut by hand, labels come apart."""
        return tuple(
            Sheet(
                self._stock,
                number,
                tuple(placements),
                self._marks(placements) if self._stock.medium is Medium.CARD else (),
                self._printer.correction_for(self._stock),
                self._printer.edges_for(self._stock),
                tuple(self._passed_over.get(at, ())),
            )
            for number, (at, placements) in enumerate(self._placed.items(), start=1)
        )

    def _marks(self, placements: Sequence[Placement]) -> tuple[CutMark, ...]:
        return cut_marks([placement.rect for placement in placements], printable=self._reach)


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


def _spots(stock: Stock, free: Sequence[int]) -> Iterator[_Spot]:
    """Give the first sheet's free positions, then every one of each further sheet, without end."""
    yield from (_Spot(1, position) for position in free)
    for number in count(2):
        yield from (_Spot(number, position) for position in range(1, stock.positions + 1))


def _inked(face: Face, placement: Placement) -> Rect:
    """Give the part of the sheet a page may ink: what was seen, or all that pages ever ink."""
    rect, ink = placement.rect, face.ink
    if ink is None:
        edge_mm = NEAREST_EDGE_MM
        return rect.inset(Insets(edge_mm, edge_mm, edge_mm, edge_mm))
    if placement.turned_deg == 0:
        return ink.moved(rect.x_mm, rect.y_mm)
    left_mm = face.size.height_mm - ink.bottom_mm
    turned = Rect(left_mm, ink.x_mm, ink.height_mm, ink.width_mm)
    return turned.moved(rect.x_mm, rect.y_mm)


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
