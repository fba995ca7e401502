"""Sheets to a finished file: composed and proved."""

from __future__ import annotations

from collections.abc import Sequence

from service.errors import ProofFailedError
from service.pipeline.options import PrintFile
from service.pipeline.printing.lay import LaidFile
from service.pipeline.printing.shelf import Shelf
from service.render.compose.sheets import Parts, write_sheets
from service.render.proof.finished.file import prove_file
from service.render.proof.finished.rasters import prove_rasters


def make_file(laid: LaidFile, shelf: Shelf, attempts: Sequence[Parts]) -> PrintFile:
    """Write a file at its place and prove it.

    `attempts` are the parts to write it with: the quickest first, and then those that mend what the
    proof may find damaged.

    Raises:
        ProofFailedError: When the finished file does not read back as it should.
    """
    file, sheets = laid.file, laid.sheets
    for number, parts in enumerate(attempts, start=1):
        write_file(laid, shelf, parts)
        try:
            prove_file(file.path, sheets, shelf, parts)
        except ProofFailedError:
            if number == len(attempts):
                raise
        else:
            break
    prove_rasters(file.path, sheets)
    return file


def write_file(laid: LaidFile, shelf: Shelf, parts: Parts) -> None:
    """Write a file at its place without looking at it again."""
    title = f"{laid.file.kind.name}, {laid.file.stock.name}"
    with laid.file.path.open("wb") as target:
        write_sheets(target, laid.sheets, shelf, parts, title=title)
