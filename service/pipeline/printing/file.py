"""Plates to a finished file: imposed, composed, proved."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

from service.errors import ProofFailedError
from service.pipeline.options import MadeCard, PlacedCard, PrintFile, PrintOptions
from service.pipeline.printing.shelf import Shelf
from service.render.compose.sheets import Parts, write_sheets
from service.render.proof.finished.file import prove_file
from service.render.proof.finished.rasters import prove_rasters
from service.sheets.impose import Sheet, impose_pages
from service.sheets.printers.used_sheet import Start, left_over


def make_file(
    cards: Sequence[MadeCard],
    shelf: Shelf,
    attempts: Sequence[Parts],
    options: PrintOptions,
    folder: Path,
) -> PrintFile:
    """Put the faces of one kind and stock on sheets, in a file of `folder`, and prove it.

    `attempts` are the parts to write it with: the quickest first, and then those that mend what the
    proof may find damaged.

    Raises:
        SheetError: When the stock cannot take the pages.
        ProofFailedError: When the finished file does not read back as it should.
    """
    kind, stock = cards[0].kind, cards[0].stock
    sheets = _imposed(cards, shelf, options)
    begun = Start(options.start_position, options.skipped)
    file = PrintFile(
        kind,
        stock,
        folder,
        len(sheets),
        len(cards),
        left_over(sheets, begun),
        tuple(sorted({position for sheet in sheets for position in sheet.passed_over})),
        tuple(_placed(cards, sheets, copies=options.copies)),
    )
    file = replace(file, path=folder / file.name)
    for number, parts in enumerate(attempts, start=1):
        with file.path.open("wb") as target:
            write_sheets(target, sheets, shelf, parts, title=f"{kind.name}, {stock.name}")
        try:
            prove_file(file.path, sheets, shelf, parts)
        except ProofFailedError:
            if number == len(attempts):
                raise
        else:
            break
    prove_rasters(file.path, sheets)
    return file


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
