"""Cards to the sheets of a file, before a byte of it is written."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from service.pipeline.options import MadeCard, PlacedCard, PrintFile, PrintOptions
from service.pipeline.printing.shelf import Shelf
from service.sheets.impose import Sheet, impose_pages
from service.sheets.printers.used_sheet import Start, UsedSheet, left_over, next_start, remember
from service.sheets.stock import Stock


@dataclass(frozen=True, slots=True)
class LaidFile:
    """A file that is to be written, its sheets, and where on the first of them it begins."""

    file: PrintFile
    sheets: tuple[Sheet, ...]
    start: Start


def lay_files(
    groups: Iterable[Sequence[MadeCard]], shelf: Shelf, options: PrintOptions, folder: Path
) -> Iterator[LaidFile]:
    """Lay each group of one kind and stock out; where sheets were begun, it goes on with them.

    Raises:
        SheetError: When a stock cannot take the pages.
    """
    begun = options.begun
    for cards in groups:
        started = _started(options, begun, cards[0].stock)
        laid = lay_file(cards, shelf, started, folder)
        if options.begun:
            begun = remember(begun, laid.file.stock.name, laid.file.left_over)
        yield laid


def lay_file(
    cards: Sequence[MadeCard], shelf: Shelf, options: PrintOptions, folder: Path
) -> LaidFile:
    """Put the faces of cards of one kind and stock on sheets, for a file in `folder`.

    Raises:
        SheetError: When the stock cannot take the pages.
    """
    kind, stock = cards[0].kind, cards[0].stock
    sheets = _imposed(cards, shelf, options)
    start = Start(options.start_position, options.skipped)
    file = PrintFile(
        kind,
        stock,
        folder,
        len(sheets),
        len(cards),
        left_over(sheets, start),
        tuple(sorted({position for sheet in sheets for position in sheet.passed_over})),
        tuple(_placed(cards, sheets, copies=options.copies)),
    )
    return LaidFile(replace(file, path=folder / file.name), sheets, start)


def _started(options: PrintOptions, begun: Sequence[UsedSheet], stock: Stock) -> PrintOptions:
    """Start where a sheet of this stock was begun, by an earlier run or an earlier file of this."""
    if not any(sheet.stock == stock.name for sheet in begun):
        return options
    start = next_start(begun, stock)
    return replace(options, start_position=start.position, skipped=start.skipped)


def _placed(
    cards: Sequence[MadeCard], sheets: Sequence[Sheet], *, copies: int
) -> Iterator[PlacedCard]:
    """Say where each copy lies: faces come in the order of cards, the copies of a face together."""
    places = (
        (sheet.number, placement.position) for sheet in sheets for placement in sheet.placements
    )
    for card in cards:
        faces = [[next(places) for _ in range(copies)] for _ in card.faces]
        for copy, lying in enumerate(zip(*faces, strict=True), start=1):
            yield PlacedCard(card.card, copy, lying)


def _imposed(cards: Sequence[MadeCard], shelf: Shelf, options: PrintOptions) -> tuple[Sheet, ...]:
    """Impose the faces, which now are known to the reach of their ink."""
    faces = [replace(face, ink=shelf.ink(face.key)) for card in cards for face in card.faces]
    return impose_pages(
        faces,
        cards[0].stock,
        start_position=options.start_position,
        skipped=options.skipped,
        copies=options.copies,
        printer=options.printer,
    )
